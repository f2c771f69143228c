/** What of the page's storage is used. */
export type PageStore = Pick<Storage, "getItem" | "setItem" | "removeItem" | "key" | "length">;

/** The page's own storage, or null: a browser may refuse even to name it. */
export function pageStore(): PageStore | null {
  try {
    return globalThis.localStorage ?? null;
  } catch {
    return null;
  }
}

/** Where texts are stored; null where nothing is. */
export type TextStore = Pick<PageStore, "getItem" | "setItem" | "removeItem"> | null;

/** The text that is stored under a key, or null: a browser that stores nothing has none. */
export function storedText(key: string, store: TextStore = pageStore()): string | null {
  try {
    return store?.getItem(key) ?? null;
  } catch {
    return null;
  }
}

/** Stores a text; null takes it away. @returns whether it is stored now: what is not lasts as long as the page */
export function storeText(key: string, text: string | null, store: TextStore = pageStore()): boolean {
  try {
    if (text === null) store?.removeItem(key);
    else store?.setItem(key, text);
    return store !== null;
  } catch {
    return false;
  }
}

/** Keys that begin so. @throws where the browser refuses its storage after all */
export function keysUnder(prefix: string, store: PageStore | null): string[] {
  const keys = Array.from({ length: store?.length ?? 0 }, (_, index) => store?.key(index) ?? "");
  return keys.filter((key) => key.startsWith(prefix));
}
