import { type CsvMark, csvFileText } from "../logbook/csvFile";
import type { ExportFile } from "../logbook/exportFiles";
import { fileNameOf } from "../shell/fileName";

/**
 * A CSV file of the desk.
 *
 * @param now - milliseconds since 1970
 */
export function deskFile(
  what: "class" | "gauge" | "sittings",
  text: string,
  { now, csv }: { readonly now: number; readonly csv: CsvMark },
): Omit<ExportFile, "told"> {
  return { name: fileNameOf({ what, at: now, ending: "csv" }), type: "text/csv", text: csvFileText(text, csv) };
}
