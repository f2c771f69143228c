import { parseSheet } from "../../../drill/sheet/parseSheet";
import type { Sheet } from "../../../drill/sheet/sheet";
import { sheetId } from "../../../drill/sheet/sheetId";
import { sheetFromLink } from "../../../drill/sheet/sheetLink";
import { SHIPPED_SHEETS } from "../../../drill/sheet/shippedSheets";
import { SHEET_WORDS } from "../../../handover/sheetWords";
import { sittingProblem } from "../../../handover/stationNeeds";
import type { SheetRecord } from "../../../records/records";
import { problemText } from "../../../wording/problem";

/** A sheet that can be sat, by its id: of a shipped one its name for addresses. */
export interface SheetToSit {
  readonly id: string;
  readonly sheet: Sheet;
}

/** Shipped sheets, those with rules for a sitting first. */
export const SHEETS_TO_SIT: readonly SheetToSit[] = SHIPPED_SHEETS.map((sheet) => ({
  id: sheetId(sheet),
  sheet,
})).sort((one, other) => Number(one.sheet.sitting === undefined) - Number(other.sheet.sitting === undefined));

/** Own sheets that can be sat, and how many must be fixed first. */
export function ownSheetsToSit(records: readonly Pick<SheetRecord, "id" | "body">[]): {
  readonly sound: readonly SheetToSit[];
  readonly unsound: number;
} {
  const sound = records.flatMap(({ id, body }) => {
    try {
      return [{ id, sheet: parseSheet(body) }];
    } catch {
      return [];
    }
  });
  return { sound, unsound: records.length - sound.length };
}

/** Whatever was pasted, reduced to the text that carries the sheet: a whole address, or the text alone. */
const linkText = (pasted: string) => /s1\.[\w-]+/.exec(pasted)?.[0] ?? pasted.trim();

/** @throws {Error} with a sentence, for a sheet that no lock can be set up for */
export function sittable(sheet: Sheet): Sheet {
  const problem = sittingProblem(sheet);
  if (problem !== null) throw new Error(problemText(problem, SHEET_WORDS));
  return sheet;
}

/**
 * The sheet that an address or a pasted link asks for.
 *
 * @param asked - id of a shipped sheet, the text of a link, or a whole address with one
 * @throws {DrillError} for a link or a sheet that is none
 * @throws {Error} for a sheet that no lock can be set up for
 */
export function sheetAskedFor(asked: string): Sheet {
  return SHEETS_TO_SIT.find(({ id }) => id === asked)?.sheet ?? sittable(sheetFromLink(linkText(asked)));
}
