import { parseSheet } from "../../drill/sheet/parseSheet";
import type { Sheet } from "../../drill/sheet/sheet";

/** Largest file that is read, bytes: a sheet is a thousandth of it. */
const MOST_BYTES = 2_000_000;

const wordsOf = (error: unknown): string => {
  if (error instanceof SyntaxError) return "it is not JSON";
  return error instanceof Error ? error.message.replace(/^sheet: /, "") : String(error);
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
    return `${name} is not taken: ${wordsOf(error)}.`;
  }
}

/** Reads a chosen file as `sheetFromText` does. */
export async function sheetFromFile(file: File): Promise<Sheet | string> {
  if (file.size > MOST_BYTES) return `${file.name} is not taken: it is far larger than a drill sheet.`;
  return sheetFromText(file.name, await file.text());
}

/** A file name made of a title: small letters, digits and hyphens. */
export function fileName(title: string): string {
  const plain = title
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  return `${plain === "" ? "sheet" : plain.slice(0, 60)}.json`;
}

/** The text of an exported file. */
export function fileText(sheet: Sheet): string {
  return `${JSON.stringify(sheet, null, 2)}\n`;
}
