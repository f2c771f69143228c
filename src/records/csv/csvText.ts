import { csvFormatRows } from "d3-dsv";
import { harmlessText } from "../../lock/harmlessText";

/** One cell: a number stays one, a text is guarded, null is empty. */
export type CsvCell = string | number | null;

/** One column of a file: what it is called, what is in it, and where that is from. */
export interface CsvColumn<Row> {
  /** Small letters and underscores; ends in the unit where it has one. */
  readonly name: string;
  /** "s", "graduations"; left out where there is none. */
  readonly unit?: string;
  /** What it means, in a sentence without its period. */
  readonly meaning: string;
  readonly cell: (row: Row) => CsvCell;
}

/**
 * Where a spreadsheet may begin to read a formula: at the beginning of a text, and after whatever it may take for the
 * end of a cell (a semicolon, a tab, a new line); spaces and quotation marks may stand between. Full-width signs count
 * as formulas in some. Source: OWASP, "CSV Injection".
 */
const FORMULA = /(?<=^|[;\t\r\n])(?=[\s\u200B\uFEFF"']*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20])/g;
/** A tab or a new line at the beginning hides what follows from a simpler guard. */
const BLANK_START = /^(?=[\t\r\n])/;

/** A text that no spreadsheet takes for a formula: an apostrophe stands before every place where one might begin. */
export const guarded = (text: string): string => harmlessText(text).replace(FORMULA, "'").replace(BLANK_START, "'");

const cellText = (cell: CsvCell): string => {
  if (cell === null) return "";
  return typeof cell === "number" ? String(cell) : guarded(cell);
};

/**
 * Rows as CSV (RFC 4180), safe to open in a spreadsheet.
 *
 * @param header - names of the columns
 */
export function csvText(header: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return `${csvFormatRows([[...header], ...rows.map((row) => row.map(cellText))])}\n`;
}

/** Rows as CSV, by columns. */
export const csvOf = <Row>(columns: readonly CsvColumn<Row>[], rows: readonly Row[]): string =>
  csvText(
    columns.map(({ name }) => name),
    rows.map((row) => columns.map(({ cell }) => cell(row))),
  );

/** A number to some decimals, without zeros at its end; null stays null. */
export const fixed = (value: number | null | undefined, decimals = 3): number | null =>
  value == null ? null : Number(value.toFixed(decimals));

/** 1 for yes, 0 for no. */
export const flagCell = (is: boolean | undefined): number => (is === true ? 1 : 0);

/** ISO 8601 in UTC. @param moment - milliseconds since 1970 */
export const timeCell = (moment: number): string => new Date(moment).toISOString();

/** Earliest first, and by id where two are of one moment: the same records come in the same order from any file. */
export const inStableOrder = <One extends { readonly startedAt: number; readonly id: string }>(
  records: readonly One[],
): One[] => records.toSorted((a, b) => a.startedAt - b.startedAt || (a.id < b.id ? -1 : 1));
