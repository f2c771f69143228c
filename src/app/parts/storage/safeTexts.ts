import { keysUnder, pageStore, storedText, storeText } from "./pageStore";
import { putRow, textRows } from "./textDatabase";

/**
 * Texts that outlast a kill of the browser. The page's own storage has them at once, for a reload, but reaches the disk
 * only some seconds later; the browser's database has them on the disk within milliseconds. Of two states of one text,
 * the one stored more often is the later.
 */
const COUNT = "gatefall.count.";

/** No screen waits longer than this for the database, milliseconds. */
const WAIT_ms = 3000;

/** What the page's own storage had no room for, or refused. */
const ofThisPage = new Map<string, string | null>();
/** How often this page knows each text to have been stored. */
const counts = new Map<string, number>();

function countOf(key: string): number {
  const stored = Number(storedText(COUNT + key));
  return Math.max(counts.get(key) ?? 0, Number.isSafeInteger(stored) ? stored : 0);
}

/** @returns whether the page's own storage has it */
function put(key: string, text: string | null, count: number): boolean {
  counts.set(key, count);
  const isStored = storeText(key, text) && storeText(COUNT + key, `${count}`);
  if (isStored) ofThisPage.delete(key);
  else ofThisPage.set(key, text);
  return isStored;
}

/** The text under a key, as it was stored last; null where there is none. */
export const safeText = (key: string): string | null =>
  ofThisPage.has(key) ? (ofThisPage.get(key) ?? null) : storedText(key);

/** Keys of texts that begin so. */
export function safeKeys(prefix: string): readonly string[] {
  const here = [...ofThisPage.keys()].filter((key) => key.startsWith(prefix));
  try {
    return [...new Set([...keysUnder(prefix, pageStore()), ...here])];
  } catch {
    return here;
  }
}

/** Stores a text, at once for a reload; null takes it away. @returns whether it outlasts this page */
export async function keepText(key: string, text: string | null): Promise<boolean> {
  const count = countOf(key) + 1;
  const isStored = put(key, text, count);
  const isSafe = await putRow({ key, text, count }).then(
    () => true,
    () => false,
  );
  return isStored || isSafe;
}

/**
 * Goes on from the browser's database where the page's own texts are behind it: after the browser was killed, or where
 * they had no room. To be waited for before a text is asked for. Never throws.
 */
export async function recallTexts(): Promise<void> {
  const tooLate = new Promise<never[]>((resolve) => setTimeout(() => resolve([]), WAIT_ms));
  const rows = await Promise.race([textRows().catch(() => []), tooLate]);
  for (const { key, text, count } of rows) if (count > countOf(key)) put(key, text, count);
}
