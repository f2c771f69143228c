import type { JobRecord } from "../jobRecord";
import type { LogbookContents } from "../logbookContents";
import { type CsvColumn, csvOf } from "./csvText";
import {
  DOUBTS,
  DURATION,
  type NamedRecord,
  NOTED,
  namedRecords,
  SITTING,
  TURNED_BY,
  WHOSE,
  yesNo,
} from "./recordColumns";

/** Columns of the file of jobs. */
export const JOB_COLUMNS: readonly CsvColumn<NamedRecord<JobRecord>>[] = [
  ...WHOSE,
  ...SITTING,
  { name: "profile", meaning: "id of the kind of lock", cell: ({ record }) => record.profileId },
  {
    name: "job",
    meaning: "change, trouble, handover, fitting, service or inspection",
    cell: ({ record }) => record.kind,
  },
  { name: "help", meaning: "full, counts or silent", cell: ({ record }) => record.help },
  yesNo("right", "whether the job was right", ({ record }) => record.isRight),
  DURATION,
  {
    name: "missed",
    meaning: "codes of what was missed, semicolons between",
    cell: ({ record }) => record.missed.join("; "),
  },
  ...NOTED,
  TURNED_BY,
  DOUBTS,
];

/** Jobs as CSV, one a row, earliest first. */
export const jobsCsv = (contents: LogbookContents): string =>
  csvOf(JOB_COLUMNS, namedRecords(contents, contents.records.jobs));
