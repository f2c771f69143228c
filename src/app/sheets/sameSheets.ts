import type { Sheet } from "../../drill/sheet/sheet";
import { sheetSha256 } from "../../drill/sheet/sheetFingerprint";
import type { SheetRecord } from "../../records/records";
import { readDraft } from "../keeping/sheets/readDraft";

const hashOf = ({ body }: SheetRecord): string | null => {
  const sheet = readDraft(body);
  if (typeof sheet === "string") return null;
  try {
    return sheetSha256(sheet);
  } catch {
    // A half-done sheet may hold what no record can, such as a number that is none.
    return null;
  }
};

/** The own sheets that ask the same as this one: a link that is opened twice gives two of them. */
export function sameSheets(sheet: Sheet, own: readonly SheetRecord[]): readonly SheetRecord[] {
  const hash = sheetSha256(sheet);
  return own.filter((record) => hashOf(record) === hash);
}
