/** What this file uses of Trusted Types, which not every browser has. */
interface TrustedTypes {
  createPolicy(name: "default", rules: { createScriptURL(address: string): string | null }): unknown;
}

/** Whether an address is a script of this app: beside the page or below it, on the same server. */
export function isOwnScript(address: string, page: string): boolean {
  const script = new URL(address, page);
  const folder = new URL(".", page);
  return (
    script.origin === folder.origin && script.pathname.startsWith(folder.pathname) && script.pathname.endsWith(".js")
  );
}

/**
 * Lets the page start workers from its own scripts. Nothing else passes: no script from text, no markup from text, for the
 * policy has no rule for them (Trusted Types, `require-trusted-types-for 'script'`).
 */
export function allowOwnScripts(): void {
  const { trustedTypes } = globalThis as { trustedTypes?: TrustedTypes };
  trustedTypes?.createPolicy("default", {
    createScriptURL: (address) => (isOwnScript(address, document.baseURI) ? address : null),
  });
}
