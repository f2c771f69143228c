import type { LogbookContents } from "../logbookContents";
import type { SittingRecord } from "../records";
import { type CheckedSitting, checkedSitting } from "../sitting/checkedSitting";
import { checkSentences } from "../sitting/checkWords";
import type { SittingShown } from "../sitting/sittingShown";
import { type CsvColumn, csvOf, fixed } from "./csvText";
import { type NamedRecord, NOTED, namedRecords, WHOSE, yesNo } from "./recordColumns";

interface Row extends NamedRecord<SittingRecord> {
  readonly checked: CheckedSitting;
}

/** A cell of what the checked record says; empty where there is none. */
const shownCell =
  (tell: (shown: SittingShown) => string | number) =>
  ({ checked }: Row) =>
    checked.kind === "ended" ? tell(checked.shown) : null;

function resultText({ checked }: Row): string {
  if (checked.kind === "running") return "under way";
  return checked.kind === "unreadable" ? "none" : (checked.shown.outcome ?? "none");
}

function recordText({ checked }: Row): string {
  if (checked.kind === "running") return "not ended";
  if (checked.kind === "unreadable") return `cannot be read: ${checked.problem}`;
  const { check, differs } = checked.shown;
  const found = checkSentences([...check.problems, ...differs, ...check.unheld, ...check.unchecked]);
  return found.length === 0 ? "sound" : found.join(" ");
}

/** Columns of the file of sittings. */
export const SITTING_COLUMNS: readonly CsvColumn<Row>[] = [
  ...WHOSE,
  {
    name: "person_on_record",
    meaning: "name in the record itself; empty where it names no one",
    cell: shownCell(({ person }) => person ?? ""),
  },
  { name: "sheet", meaning: "title of the drill sheet, from the record", cell: shownCell(({ title }) => title) },
  {
    name: "sheet_fingerprint",
    meaning: "short fingerprint of what counts in the sheet",
    cell: shownCell(({ fingerprint }) => fingerprint),
  },
  {
    name: "result",
    meaning: "passed, failed, not shown yet, broken-off, under way, or none where the record fails its check",
    cell: resultText,
  },
  { name: "tries", meaning: "tries made, lost ones too", cell: shownCell(({ tries }) => tries) },
  { name: "lost_tries", meaning: "tries lost to a reload or a crash", cell: shownCell(({ lostTries }) => lostTries) },
  { name: "pauses", meaning: "how often it was paused", cell: shownCell(({ pauses }) => pauses) },
  { name: "reloads", meaning: "how often the page was loaded anew in it", cell: shownCell(({ reloads }) => reloads) },
  {
    name: "worked_s",
    unit: "s",
    meaning: "working time, without pauses",
    cell: shownCell(({ worked_ms }) => fixed(worked_ms / 1000) ?? 0),
  },
  yesNo(
    "practice",
    "whether its seed was given in an address: then it was practice",
    ({ checked }) => checked.kind === "ended" && checked.shown.isPractice,
  ),
  { name: "record", meaning: "sound, or everything that checking the record found", cell: recordText },
  ...NOTED,
];

/**
 * Sittings as CSV, one a row, earliest first: what their checked records say.
 *
 * @param appVersion - the version that checks
 */
export function sittingsCsv(contents: LogbookContents, appVersion: string): string {
  const { records, traces } = contents;
  const names = new Map(records.people.map(({ id, name }) => [id, name]));
  const rows = namedRecords(contents, records.sittings).map((named) => {
    const person = names.get(named.record.personId);
    return { ...named, checked: checkedSitting(named.record, { appVersion, person, traces }) };
  });
  return csvOf(SITTING_COLUMNS, rows);
}
