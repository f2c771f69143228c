import { type PageStore, pageStore } from "./pageStore";

/** The first key under which nothing else is set aside: what was set aside before stays. */
function freeKey(key: string, text: string, store: PageStore): string {
  let free = `${key}.unread`;
  for (let k = 2; ![null, text].includes(store.getItem(free)); k++) free = `${key}.unread.${k}`;
  return free;
}

/**
 * Sets aside a stored text that cannot be read, where what is stored next under its key does not write over it.
 *
 * @returns whether there is a copy now
 */
export function setTextAside(key: string, store: PageStore | null = pageStore()): boolean {
  try {
    const text = store?.getItem(key) ?? null;
    if (store === null || text === null) return false;
    store.setItem(freeKey(key, text, store), text);
    return true;
  } catch {
    return false;
  }
}
