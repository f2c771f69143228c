import { csvDictionary } from "../../../progress/csv/csvDictionary";
import { attemptsCsv } from "../../../records/csv/attemptsCsv";
import { attemptsReplay } from "../../../records/csv/attemptsReplay";
import { jobsCsv } from "../../../records/csv/jobsCsv";
import { sittingsCsv } from "../../../records/csv/sittingsCsv";
import { zeroingsCsv } from "../../../records/csv/zeroingsCsv";
import { writeLogbookFile } from "../../../records/file/logbookFile";
import { contentsOf, type LogbookContents } from "../../../records/logbookContents";
import type { StatedSitting } from "../../../records/xapi/sittingStatements";
import { xapiStatements } from "../../../records/xapi/xapiStatements";
import { countText } from "../../../wording/amountWords";
import { type CsvMark, csvFileText } from "../../parts/files/csvFile";
import { fileNameOf } from "../../parts/files/fileName";
import type { SavedFile } from "../../parts/files/saveFile";
import { APP_VERSION } from "../../parts/page/appVersion";
import { statedInSlices } from "./statedInSlices";

/** A kind of file that a logbook can be saved as. */
export type ExportKind = "logbook" | "attempts" | "jobs" | "zeroings" | "sittings" | "dictionary" | "replay" | "xapi";

/** A way to save a logbook, with its button and what it is good for. */
export interface ExportWay {
  readonly kind: ExportKind;
  readonly label: string;
  readonly use: string;
}

/** Every kind of file, the one that can be read back first. */
export const EXPORTS: readonly ExportWay[] = [
  { kind: "logbook", label: "Whole logbook", use: "everything with all motions, to import here or elsewhere (JSON)" },
  { kind: "attempts", label: "Attempts as CSV", use: "one row an attempt, for a spreadsheet" },
  { kind: "jobs", label: "Jobs as CSV", use: "changes, trouble and handovers, one row each" },
  { kind: "zeroings", label: "Zeroings as CSV", use: "one row a zeroing, with every stop" },
  { kind: "sittings", label: "Sittings as CSV", use: "one row a sitting, as its checked record has it" },
  { kind: "dictionary", label: "Columns as CSV", use: "what each column of these files means, with its unit" },
  { kind: "replay", label: "Replay lines", use: "every motion, for the command line (JSON Lines)" },
  { kind: "xapi", label: "xAPI statements", use: "for a learning record store (IEEE 9274.1.1, JSON)" },
];

/** A file ready to be saved. */
export interface ExportFile extends SavedFile {
  /** What is in it, in a sentence. */
  readonly told: string;
}

/** What a file is made of. */
interface Written extends Pick<ExportFile, "text" | "told"> {
  readonly ending: keyof typeof TYPES;
  /** Where it is not that of the kind. */
  readonly what?: string;
}

const TYPES = { json: "application/json", csv: "text/csv", jsonl: "application/x-ndjson" } as const;

function savedWords({ records: { people, attempts, jobs } }: LogbookContents): string {
  const persons = countText(people.length, "person", "people");
  const dialed = countText(attempts.length, "attempt");
  return jobs.length === 0
    ? `Saved ${persons} and ${dialed}.`
    : `Saved ${persons}, ${dialed} and ${countText(jobs.length, "job")}.`;
}

const rows = (text: string, count: number, one: string): Written => ({
  ending: "csv",
  text,
  told: `Saved ${countText(count, one)}.`,
});

function replayLines(contents: LogbookContents): Written {
  const { text, leftOut } = attemptsReplay(contents);
  const written = contents.records.attempts.length - leftOut;
  const aside =
    leftOut === 0 ? "" : ` ${leftOut} left out: the motion was not recorded, or this version does not know the lock.`;
  return { ending: "jsonl", what: "replay", text, told: `Saved ${countText(written, "attempt")}.${aside}` };
}

function statements(contents: LogbookContents, stated?: readonly StatedSitting[]): Written {
  const all = xapiStatements(contents, APP_VERSION, stated);
  return { ending: "json", text: JSON.stringify(all, null, 1), told: `Saved ${countText(all.length, "statement")}.` };
}

const WRITERS: Readonly<Record<ExportKind, (contents: LogbookContents, now: number) => Written>> = {
  logbook: (contents, now) => ({
    ending: "json",
    text: writeLogbookFile(contents, now),
    told: savedWords(contents),
  }),
  attempts: (contents) => rows(attemptsCsv(contents), contents.records.attempts.length, "attempt"),
  jobs: (contents) => rows(jobsCsv(contents), contents.records.jobs.length, "job"),
  zeroings: (contents) => rows(zeroingsCsv(contents), contents.records.zeroings.length, "zeroing"),
  sittings: (contents) => rows(sittingsCsv(contents, APP_VERSION), contents.records.sittings.length, "sitting"),
  dictionary: () => {
    const text = csvDictionary();
    return { ...rows(text, text.trimEnd().split("\n").length - 1, "column"), what: "columns" };
  },
  replay: replayLines,
  xapi: (contents) => statements(contents),
};

/** What is asked of an export beside its kind. */
export interface ExportSetting {
  /** Null for everyone. */
  readonly personId: string | null;
  /** Milliseconds since 1970. */
  readonly now: number;
  readonly csv?: CsvMark;
}

const partOf = (contents: LogbookContents, personId: string | null) =>
  personId === null ? contents : contentsOf(new Set([personId]), contents);

/** A logbook, or one person's part of it, as a file. */
export function exportFile(kind: ExportKind, contents: LogbookContents, setting: ExportSetting): ExportFile {
  const part = partOf(contents, setting.personId);
  return fileOf(kind, part, WRITERS[kind](part, setting.now), setting);
}

/**
 * The same without holding the page: statements take every sitting to be checked, one slice of work each.
 *
 * @param say - told how far it is, a sentence
 */
export async function exportFileInSlices(
  kind: ExportKind,
  contents: LogbookContents,
  setting: ExportSetting,
  say: (progress: string) => void,
): Promise<ExportFile> {
  if (kind !== "xapi") return exportFile(kind, contents, setting);
  const part = partOf(contents, setting.personId);
  return fileOf(kind, part, statements(part, await statedInSlices(part.records.sittings, say)), setting);
}

function fileOf(
  kind: ExportKind,
  part: LogbookContents,
  { ending, what = kind, text, told }: Written,
  { now, csv = "plain" }: ExportSetting,
): ExportFile {
  const person = part.records.people.length === 1 ? part.records.people[0]?.name : null;
  return {
    name: fileNameOf({ what, person: kind === "dictionary" ? null : person, at: now, ending }),
    type: TYPES[ending],
    text: ending === "csv" ? csvFileText(text, csv) : text,
    told,
  };
}
