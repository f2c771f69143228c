/** Tells a spreadsheet that a file is UTF-8; others may take it for a letter. */
const BYTE_ORDER_MARK = "\uFEFF";

/** Whether CSV files are made for spreadsheets. */
export type CsvMark = "plain" | "marked";

/** The two ways, the usual one first. */
export const CSV_MARKS = ["plain", "marked"] as const satisfies readonly CsvMark[];

/** The text of a CSV file, with a byte order mark where it is asked for. */
export const csvFileText = (text: string, mark: CsvMark): string =>
  mark === "marked" ? `${BYTE_ORDER_MARK}${text}` : text;
