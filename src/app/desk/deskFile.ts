import { type CsvMark, csvFileText } from "../parts/files/csvFile";
import { fileNameOf } from "../parts/files/fileName";
import type { SavedFile } from "../parts/files/saveFile";

/**
 * A CSV file of the desk.
 *
 * @param now - milliseconds since 1970
 */
export function deskFile(
  what: "class" | "gauge" | "sittings",
  text: string,
  { now, csv }: { readonly now: number; readonly csv: CsvMark },
): SavedFile {
  return { name: fileNameOf({ what, at: now, ending: "csv" }), type: "text/csv", text: csvFileText(text, csv) };
}
