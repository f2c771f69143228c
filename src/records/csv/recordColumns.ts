import { DIAL_DOUBTS, type DoubtedRecord } from "../../realdial/sources/dialDoubt";
import type { LogbookContents } from "../logbookContents";
import { type SourcedRecord, sourceTexts } from "../sourceTexts";
import type { TryEnd } from "../triedRight";
import type { CsvColumn } from "./csvText";
import { fixed, flagCell, inStableOrder, timeCell } from "./csvText";

/** A record of a person, with the names that belong to it. */
export interface NamedRecord<One> {
  readonly record: One;
  /** Empty where the logbook has no such person. */
  readonly person: string;
  /** Title of the sheet of the sitting it belongs to; null where it belongs to none, or to one that is not here. */
  readonly sheet: string | null;
}

/** What every record of a person has. */
export interface PersonalRecord {
  readonly id: string;
  readonly startedAt: number;
  readonly personId: string;
}

/** A record that may belong to a sitting. */
export interface SatRecord extends PersonalRecord {
  readonly sittingId?: string | undefined;
  readonly sheetId?: string | undefined;
}

/** Records with their names, earliest first. */
export function namedRecords<One extends SatRecord>(
  { records: { people, sittings } }: Pick<LogbookContents, "records">,
  list: readonly One[],
): NamedRecord<One>[] {
  const names = new Map(people.map(({ id, name }) => [id, name]));
  const titles = new Map(sittings.map(({ id, title }) => [id, title]));
  return inStableOrder(list).map((record) => ({
    record,
    person: names.get(record.personId) ?? "",
    sheet: titles.get(record.sittingId ?? "") ?? null,
  }));
}

type Column = CsvColumn<NamedRecord<SatRecord>>;

/** Which record, when, and whose. */
export const WHOSE: readonly Column[] = [
  { name: "id", meaning: "id of the record, the same on every device", cell: ({ record }) => record.id },
  {
    name: "started",
    unit: "UTC, ISO 8601",
    meaning: "when it was begun",
    cell: ({ record }) => timeCell(record.startedAt),
  },
  { name: "person", meaning: "name of the person in this logbook", cell: ({ person }) => person },
  {
    name: "person_id",
    meaning: "id of the person, the same after a change of name",
    cell: ({ record }) => record.personId,
  },
];

/** Which sitting it was part of. */
export const SITTING: readonly Column[] = [
  {
    name: "sitting_id",
    meaning: "id of the sitting it belongs to; empty for practice",
    cell: ({ record }) => record.sittingId ?? null,
  },
  {
    name: "sheet_id",
    meaning: "id of the drill sheet; empty for practice without a sheet",
    cell: ({ record }) => record.sheetId ?? null,
  },
  { name: "sheet", meaning: "title of the drill sheet of the sitting", cell: ({ sheet }) => sheet },
];

type Noted = NamedRecord<{ readonly tags?: readonly string[] | undefined; readonly note?: string | undefined }>;

/** What somebody wrote to it. */
export const NOTED: readonly CsvColumn<Noted>[] = [
  { name: "tags", meaning: "tags, semicolons between", cell: ({ record }) => (record.tags ?? []).join("; ") },
  { name: "note", meaning: "what somebody wrote to it", cell: ({ record }) => record.note ?? "" },
];

/** How long it took. */
export const DURATION: CsvColumn<NamedRecord<{ readonly duration_ms: number }>> = {
  name: "duration_s",
  unit: "s",
  meaning: "time from the first motion to the end",
  cell: ({ record }) => fixed(record.duration_ms / 1000),
};

/** A yes or no. */
export const yesNo = <Row>(name: string, meaning: string, is: (row: Row) => boolean | undefined): CsvColumn<Row> => ({
  name,
  unit: "1 yes, 0 no",
  meaning,
  cell: (row) => flagCell(is(row)),
});

/** Whether a station's time ran out. */
export const LATE: CsvColumn<NamedRecord<{ readonly isLate?: boolean | undefined }>> = yesNo(
  "late",
  "whether it took longer than its station of a sitting allows; then it counts as not right",
  ({ record }) => record.isLate,
);

/** What turned the dial. */
export const TURNED_BY: CsvColumn<NamedRecord<SourcedRecord>> = {
  name: "turned_by",
  unit: "graduations",
  meaning:
    "what turned the dial, with its smallest step and the standard deviation of its noise at rest in brackets; semicolons between",
  cell: ({ record }) => sourceTexts(record).join("; "),
};

/** Why turns are in doubt. */
export const DOUBTS: CsvColumn<NamedRecord<DoubtedRecord>> = {
  name: "turns_in_doubt",
  meaning: `why the turns may be miscounted: ${DIAL_DOUBTS.join(", ")}; semicolons between`,
  cell: ({ record }) => (record.doubts ?? []).join("; "),
};

/** What turned the dial, and whether that was admitted. */
export const TURNED_AS_ADMITTED: readonly CsvColumn<
  NamedRecord<SourcedRecord & DoubtedRecord & Pick<TryEnd, "isNotAdmitted" | "isDoubtRefused">>
>[] = [
  TURNED_BY,
  yesNo(
    "not_admitted",
    "whether its station of a sitting does not admit what turned the dial; then it counts as not right",
    ({ record }) => record.isNotAdmitted,
  ),
  DOUBTS,
  yesNo(
    "doubt_refused",
    "whether its station of a sitting counts no try with turns in doubt; then it counts as not right",
    ({ record }) => record.isDoubtRefused,
  ),
];
