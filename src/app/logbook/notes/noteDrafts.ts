import { storedText, storeText } from "../../parts/storage/pageStore";
import type { TypedNote } from "./notes";

const PREFIX = "gatefall.note.";

/** What was typed to a record and is not saved yet: text storage has it safe before the next event. */
export function draftOf(recordId: string): TypedNote | null {
  try {
    const found: unknown = JSON.parse(storedText(PREFIX + recordId) ?? "null");
    if (typeof found !== "object" || found === null || !("tags" in found && "note" in found)) return null;
    const { tags, note } = found;
    return typeof tags === "string" && typeof note === "string" ? { tags, note } : null;
  } catch {
    return null;
  }
}

/** Holds what is typed until it is saved; null once it is. Where nothing is stored, leaving field or page still saves it. */
export function holdDraft(recordId: string, typed: TypedNote | null): void {
  storeText(PREFIX + recordId, typed && JSON.stringify(typed));
}
