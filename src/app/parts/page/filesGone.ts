/** What browsers say when a part of the page cannot be fetched: Chromium, Firefox, Safari, and for a style sheet. */
const SIGNS = [
  "Failed to fetch dynamically imported module",
  "error loading dynamically imported module",
  "Importing a module script failed",
  "Unable to preload CSS",
];

/** What to say of it. */
export const FILES_GONE_WORDS =
  "A file of this page could not be loaded: there is no network, or a new version of Gatefall was started. With the network back, reload the page; what you recorded is not lost.";

/** Whether an error means that a part of the app is not on the server any more, or out of reach. */
export const areFilesGone = (error: unknown): boolean =>
  error instanceof Error && SIGNS.some((sign) => error.message.includes(sign));
