import type { TypedNote } from "./notes";

const PREFIX = "gatefall.note.";

/** What was typed to a record and is not saved yet: text storage has it safe before the next event. */
export function draftOf(recordId: string): TypedNote | null {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(PREFIX + recordId) ?? "null");
    if (typeof found !== "object" || found === null || !("tags" in found && "note" in found)) return null;
    const { tags, note } = found;
    return typeof tags === "string" && typeof note === "string" ? { tags, note } : null;
  } catch {
    return null;
  }
}

/** Holds what is typed until it is saved; null once it is. */
export function holdDraft(recordId: string, typed: TypedNote | null): void {
  try {
    if (typed === null) localStorage.removeItem(PREFIX + recordId);
    else localStorage.setItem(PREFIX + recordId, JSON.stringify(typed));
  } catch {
    // Where nothing is stored, leaving the field and leaving the page still save it.
  }
}
