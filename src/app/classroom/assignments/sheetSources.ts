import { parseSheet } from "../../../drill/sheet/parseSheet";
import type { Sheet } from "../../../drill/sheet/sheet";
import { SHEET_WORDS } from "../../../handover/sheetWords";
import { sittingProblem } from "../../../handover/stationNeeds";
import { problemText } from "../../../wording/problem";
import { ownSheets } from "../../keeping/sheets/ownSheets";
import { SHEETS_TO_SIT } from "../../keeping/sheets/sheetChoice";
import { sheetFromFile } from "../../keeping/sheets/sheetFile";
import type { Choices } from "../../parts/controls/Select";
import { shownName } from "../../parts/shownName";

/** A sheet that can be set, and the words by which it is chosen. */
export interface OfferedSheet {
  readonly key: string;
  readonly words: string;
  readonly sheet: Sheet;
}

const SAMPLES: readonly OfferedSheet[] = SHEETS_TO_SIT.map(({ id, sheet }) => ({
  key: `sample ${id}`,
  words: `Sample for ${sheet.sitting === undefined ? "practice" : "a test"}: ${shownName(sheet.title)}`,
  sheet,
}));

/** Own sheets of this browser that are whole, then the samples. */
export async function offeredSheets(): Promise<readonly OfferedSheet[]> {
  const own = (await ownSheets()).filter((sheet) => sittingProblem(sheet) === null);
  const offered = own.map((sheet, k) => ({
    key: `own ${k}`,
    words: `Your sheet: ${shownName(sheet.title)}`,
    sheet,
  }));
  return [...offered, ...SAMPLES];
}

/**
 * The sheet of a file, that can be set.
 *
 * @throws {Error} with a sentence without its period
 */
export async function sheetOfFile(file: File): Promise<OfferedSheet> {
  const sheet = await sheetFromFile(file);
  if (typeof sheet === "string") throw new Error(sheet.replace(/\.$/, ""));
  const problem = sittingProblem(sheet);
  if (problem !== null) {
    throw new Error(`${file.name} was not loaded: no lock can be set up for it, ${problemText(problem, SHEET_WORDS)}`);
  }
  return { key: "file", words: `From ${file.name}: ${shownName(sheet.title)}`, sheet };
}

/** The sheet that an assignment has. */
export const assignedSheet = (body: unknown): OfferedSheet => {
  const sheet = parseSheet(body);
  return { key: "as it is", words: `As assigned: ${shownName(sheet.title)}`, sheet };
};

/** The sheets as a list to choose from. */
export const sheetChoices = (offered: readonly OfferedSheet[]): Choices => [
  ["", "Choose a sheet"],
  ...offered.map(({ key, words }) => [key, words] as const),
];
