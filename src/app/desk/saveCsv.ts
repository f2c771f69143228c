import { type CsvMark, csvFileText } from "../parts/files/csvFile";
import { fileNameOf } from "../parts/files/fileName";
import { saveFile } from "../parts/files/saveFile";

/** Saves a CSV file of the desk. */
export function saveCsv(what: "class" | "gauge" | "sittings", text: string, mark: CsvMark): void {
  saveFile({
    name: fileNameOf({ what, at: Date.now(), ending: "csv" }),
    type: "text/csv",
    text: csvFileText(text, mark),
  });
}
