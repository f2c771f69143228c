import { ATTEMPT_COLUMNS } from "../../records/csv/attemptsCsv";
import { type CsvColumn, csvText } from "../../records/csv/csvText";
import { JOB_COLUMNS } from "../../records/csv/jobsCsv";
import { SITTING_COLUMNS } from "../../records/csv/sittingsCsv";
import { ZEROING_COLUMNS } from "../../records/csv/zeroingsCsv";
import { CLASS_COLUMNS } from "./classCsv";
import { GAUGE_COLUMNS } from "./gaugeCsv";

/** A column as it is explained. */
export type ExplainedColumn = Pick<CsvColumn<never>, "name" | "unit" | "meaning">;

/** Every CSV file of this program with its columns, in the order they are in it. */
export const CSV_FILES: readonly { readonly file: string; readonly columns: readonly ExplainedColumn[] }[] = [
  { file: "attempts", columns: ATTEMPT_COLUMNS },
  { file: "jobs", columns: JOB_COLUMNS },
  { file: "zeroings", columns: ZEROING_COLUMNS },
  { file: "sittings", columns: SITTING_COLUMNS },
  { file: "class", columns: CLASS_COLUMNS },
  { file: "gauge", columns: GAUGE_COLUMNS },
];

/** What every column of every CSV file means, as CSV, one column a row. */
export const csvDictionary = (): string =>
  csvText(
    ["file", "column", "unit", "meaning"],
    CSV_FILES.flatMap(({ file, columns }) =>
      columns.map(({ name, unit, meaning }) => [file, name, unit ?? "", meaning]),
    ),
  );
