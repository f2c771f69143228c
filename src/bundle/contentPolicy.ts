/**
 * What a page of the app may load and run: its own files and nothing else, no script or style written into a page, no
 * code made from text. Scripts are named to the browser by `ownScripts` alone (Trusted Types).
 */
const DIRECTIVES = [
  "default-src 'self'",
  // These do not fall back on the first.
  "base-uri 'none'",
  "form-action 'none'",
  "object-src 'none'",
  "worker-src 'self'",
  "require-trusted-types-for 'script'",
  "trusted-types default",
] as const;

/** For the page's own head, whichever server sends it. A page cannot say there who may frame it. */
export const PAGE_POLICY = DIRECTIVES.join("; ");

/** Sent with every file by `npm start`. */
export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  "Content-Security-Policy": [...DIRECTIVES, "frame-ancestors 'none'"].join("; "),
  "X-Frame-Options": "DENY",
  "X-Content-Type-Options": "nosniff",
  "Permissions-Policy": "camera=(self), microphone=(), geolocation=()",
  "Referrer-Policy": "no-referrer",
};
