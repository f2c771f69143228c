import { pageStore } from "../parts/storage/pageStore";

/** Where the page's storage has the id of whoever practiced last. */
export const PERSON_KEY = "gatefall.person";

/** Under these, pages leave records to the next page: notes as they were taken down, and writes. */
export const NOTES_PREFIX = "gatefall.notes.";
export const WAITING_PREFIX = "gatefall.waiting.";

/** Whether anybody has practiced in this browser, or left a record, as far as one can tell before the logbook is open. */
export function hasTraces(): boolean {
  try {
    const keys = Object.keys(pageStore() ?? {});
    return keys.some((key) => key === PERSON_KEY || key.startsWith(NOTES_PREFIX) || key.startsWith(WAITING_PREFIX));
  } catch {
    return false;
  }
}
