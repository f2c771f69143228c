import type { Turn } from "../../lock/dial";
import type { LogbookContents } from "../logbookContents";
import type { ZeroingRecord } from "../records";
import { sittingOf } from "../tryOfSitting";
import { type CsvColumn, csvOf, fixed } from "./csvText";
import { LATE, type NamedRecord, namedRecords, SITTING, TURNED_AS_ADMITTED, WHOSE } from "./recordColumns";

type Row = NamedRecord<ZeroingRecord>;

const accepted = ({ readings }: ZeroingRecord, turn: Turn) =>
  readings.filter((one) => one.turn === turn && one.refusal === undefined).map(({ deviation }) => deviation);

const mean = (values: readonly number[]) =>
  values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;

const spread = (values: readonly number[]) => (values.length === 0 ? null : Math.max(...values) - Math.min(...values));

const columnsOf = (turn: Turn): CsvColumn<Row>[] => [
  {
    name: `${turn}_stops`,
    meaning: `stops recorded turning ${turn}`,
    cell: ({ record }) => accepted(record, turn).length,
  },
  {
    name: `${turn}_mean`,
    unit: "graduations",
    meaning: `mean distance of the zero mark from the index turning ${turn}; left is plus`,
    cell: ({ record }) => fixed(mean(accepted(record, turn))),
  },
  {
    name: `${turn}_spread`,
    unit: "graduations",
    meaning: `largest less smallest of them, turning ${turn}`,
    cell: ({ record }) => fixed(spread(accepted(record, turn))),
  },
];

const readingText = ({ turn, deviation, refusal }: ZeroingRecord["readings"][number]) =>
  `${turn} ${fixed(deviation)}${refusal === undefined ? "" : ` (refused: ${refusal})`}`;

/** Columns of the file of zeroings. */
export const ZEROING_COLUMNS: readonly CsvColumn<Row>[] = [
  ...WHOSE,
  ...SITTING,
  { name: "profile", meaning: "id of the kind of lock", cell: ({ record }) => record.profileId },
  { name: "outcome", meaning: "zero-set, not-set or broken-off", cell: ({ record }) => record.outcome },
  LATE,
  ...columnsOf("right"),
  ...columnsOf("left"),
  {
    name: "refused",
    meaning: "stops that were refused",
    cell: ({ record }) => record.readings.filter(({ refusal }) => refusal !== undefined).length,
  },
  {
    name: "stops",
    unit: "graduations",
    meaning: "every stop in order, with the turn and why it was refused; semicolons between",
    cell: ({ record }) => record.readings.map(readingText).join("; "),
  },
  ...TURNED_AS_ADMITTED,
];

/** Zeroings as CSV, one a row, earliest first. */
export function zeroingsCsv(contents: LogbookContents): string {
  const list = contents.records.zeroings.map((one) => ({ ...one, sittingId: sittingOf(one) }));
  return csvOf(ZEROING_COLUMNS, namedRecords(contents, list));
}
