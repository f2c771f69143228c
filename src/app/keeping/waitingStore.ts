/** What of the page's storage is used. */
export type WaitingStore = Pick<Storage, "getItem" | "setItem" | "removeItem" | "key" | "length">;

/** The page's own storage, or null: a browser may refuse even to name it. */
export function pageStore(): WaitingStore | null {
  try {
    return globalThis.localStorage ?? null;
  } catch {
    return null;
  }
}
