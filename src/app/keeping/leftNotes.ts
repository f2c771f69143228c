import { newId } from "../parts/page/newId";
import { keysUnder, type PageStore, pageStore, storeText } from "../parts/storage/pageStore";
import type { WaitingNote } from "./keepingQueue";
import { NOTES_PREFIX as PREFIX } from "./traces";

/** Names this page among all that are open. */
const OWN_KEY = PREFIX + newId();

/**
 * Leaves records that are not kept yet to the next page, in place of those left before.
 *
 * @returns whether they are safe
 */
export function leaveNotes(notes: readonly WaitingNote[], store: PageStore | null = pageStore()): boolean {
  const text = notes.length === 0 ? null : JSON.stringify(notes);
  return storeText(OWN_KEY, text, store) || text === null;
}

/** The value of a text, or nothing where it is none: what cannot be read is no record. */
function parsedText(text: string | null): unknown {
  try {
    return JSON.parse(text ?? "[]");
  } catch {
    return [];
  }
}

/** What pages before this one left, whatever it is, by where it lies. It stays there until it is forgotten. */
export function leftNotes(store: PageStore | null = pageStore()): ReadonlyMap<string, unknown> {
  try {
    return new Map(keysUnder(PREFIX, store).map((key) => [key, parsedText(store?.getItem(key) ?? null)]));
  } catch {
    return new Map();
  }
}

/** Forgets what was left, once it is kept. */
export function forgetLeft(left: ReadonlyMap<string, unknown>, store: PageStore | null = pageStore()): void {
  // A storage that is refused by now is asked for it by the next page: a record that comes twice is one record.
  for (const key of left.keys()) storeText(key, null, store);
}
