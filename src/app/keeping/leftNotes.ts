import { newId } from "../parts/page/newId";
import type { WaitingNote } from "./keepingQueue";
import { pageStore, type WaitingStore } from "./waitingStore";

const PREFIX = "gatefall.notes.";

/** Names this page among all that are open. */
const OWN_KEY = PREFIX + newId();

/** Leaves records that nothing could keep yet to the next page. @returns whether they are safe */
export function leaveNotes(notes: readonly WaitingNote[], store: WaitingStore | null = pageStore()): boolean {
  if (notes.length === 0) return true;
  try {
    store?.setItem(OWN_KEY, JSON.stringify(notes));
    return store !== null;
  } catch {
    return false;
  }
}

/** What pages before this one left, whatever it is; it is not there a second time. */
export function takeLeftNotes(store: WaitingStore | null = pageStore()): unknown[] {
  try {
    const keys = Array.from({ length: store?.length ?? 0 }, (_, index) => store?.key(index) ?? "");
    return keys
      .filter((key) => key.startsWith(PREFIX))
      .map((key) => {
        const text = store?.getItem(key) ?? "[]";
        store?.removeItem(key);
        return JSON.parse(text);
      });
  } catch {
    return [];
  }
}
