import { csvFormatRows } from "d3-dsv";

/** One cell: a number stays one, a text is guarded, null is empty. */
export type CsvCell = string | number | null;

/** Beginnings that a spreadsheet takes for a formula. Source: OWASP, "CSV Injection". */
const FORMULA = /^[=+\-@\t\r\n]/;

const cellText = (cell: CsvCell): string => {
  if (cell === null) return "";
  if (typeof cell === "number") return String(cell);
  return FORMULA.test(cell) ? `'${cell}` : cell;
};

/**
 * Rows as CSV (RFC 4180), safe to open in a spreadsheet: a text that would be taken for a formula gets an apostrophe.
 *
 * @param header - names of the columns
 */
export function csvText(header: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return `${csvFormatRows([[...header], ...rows.map((row) => row.map(cellText))])}\n`;
}
