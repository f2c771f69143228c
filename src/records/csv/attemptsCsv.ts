import type { AttemptRecord } from "../attemptRecord";
import type { LogbookContents } from "../logbookContents";
import { type CsvColumn, csvOf, fixed } from "./csvText";
import {
  DURATION,
  LATE,
  type NamedRecord,
  NOTED,
  namedRecords,
  SITTING,
  TURNED_AS_ADMITTED,
  WHOSE,
  yesNo,
} from "./recordColumns";

type Row = NamedRecord<AttemptRecord>;

const STOPS = [1, 2, 3, 4, 5, 6];

const stopColumn = (step: number): CsvColumn<Row> => ({
  name: `stop_error_${step}`,
  unit: "graduations",
  meaning: `how far the stop at number ${step} was off, along the turn; plus ran past, minus stopped short`,
  cell: ({ record }) => fixed(record.stops.find((stop) => stop.step === step)?.error),
});

const faultsText = ({ faults }: AttemptRecord) =>
  faults.map(({ code, number, size }) => `${code} ${number} (${fixed(size, 2)})`).join("; ");

/** Columns of the file of attempts. */
export const ATTEMPT_COLUMNS: readonly CsvColumn<Row>[] = [
  ...WHOSE,
  ...SITTING,
  { name: "profile", meaning: "id of the kind of lock", cell: ({ record }) => record.profileId },
  {
    name: "exercise",
    meaning: "open: the whole opening; first 2: the first two numbers",
    cell: ({ record }) => record.exercise,
  },
  { name: "combination", meaning: "numbers in dialing order", cell: ({ record }) => record.combination.join("-") },
  { name: "help", meaning: "full, counts or silent", cell: ({ record }) => record.help },
  {
    name: "conditions",
    meaning: "what the sheet or the bench set, semicolons between",
    cell: ({ record }) => record.conditions.join("; "),
  },
  yesNo("opened", "whether it opened at this try", ({ record }) => record.opened),
  yesNo("unfinished", "whether it never came to its end; it counts nowhere", ({ record }) => record.isUnfinished),
  LATE,
  DURATION,
  {
    name: "faults",
    unit: "graduations",
    meaning: "each fault with its number and, in brackets, its size",
    cell: ({ record }) => faultsText(record),
  },
  ...STOPS.map(stopColumn),
  {
    name: "estimate",
    unit: "graduations",
    meaning: "own estimate of the worst stop, given before it was shown",
    cell: ({ record }) => fixed(record.estimate),
  },
  ...NOTED,
  ...TURNED_AS_ADMITTED,
];

/** Attempts as CSV, one a row, earliest first. */
export const attemptsCsv = (contents: LogbookContents): string =>
  csvOf(ATTEMPT_COLUMNS, namedRecords(contents, contents.records.attempts));
