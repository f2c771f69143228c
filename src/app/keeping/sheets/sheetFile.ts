import { parseSheet } from "../../../drill/sheet/parseSheet";
import type { Sheet } from "../../../drill/sheet/sheet";
import { ProblemError } from "../../../wording/problem";
import { messageOf } from "../../parts/page/messageOf";

/** Largest file that is read, bytes: a sheet is a thousandth of it. */
const MOST_BYTES = 2_000_000;

const wordsOf = (error: unknown): string => {
  if (error instanceof SyntaxError) return "it is not JSON";
  return error instanceof ProblemError ? error.says : messageOf(error);
};

/**
 * A sheet from a file's text.
 *
 * @returns the sheet, or a sentence that says why there is none
 */
export function sheetFromText(name: string, text: string): Sheet | string {
  try {
    return parseSheet(JSON.parse(text));
  } catch (error) {
    return `${name} was not loaded: ${wordsOf(error)}. Nothing was changed.`;
  }
}

/** Reads a chosen file as `sheetFromText` does. */
export async function sheetFromFile(file: File): Promise<Sheet | string> {
  if (file.size > MOST_BYTES)
    return `${file.name} was not loaded: it is larger than 2 MB, and a drill sheet is never that large. Choose another file.`;
  return sheetFromText(file.name, await file.text());
}

/** The text of an exported file. */
export function fileText(sheet: Sheet): string {
  return `${JSON.stringify(sheet, null, 2)}\n`;
}
