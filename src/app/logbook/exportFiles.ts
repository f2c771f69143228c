import { attemptsCsv } from "../../logbook/attemptsCsv";
import { attemptsReplay } from "../../logbook/attemptsReplay";
import { jobsCsv } from "../../logbook/jobsCsv";
import { contentsOf, type LogbookContents } from "../../logbook/logbookContents";
import { writeLogbookFile } from "../../logbook/logbookFile";
import { xapiStatements } from "../../logbook/xapiStatements";
import { fileNameOf } from "../shell/fileName";
import { countText } from "./figures/numbers";

/** A kind of file that a logbook can be saved as. */
export type ExportKind = "logbook" | "csv" | "jobs" | "replay" | "xapi";

/** Every kind, with its button and what it is good for. */
export const EXPORTS: readonly { readonly kind: ExportKind; readonly label: string; readonly use: string }[] = [
  { kind: "logbook", label: "Whole logbook", use: "everything, motions too; can be imported here or elsewhere (JSON)" },
  { kind: "csv", label: "Attempts as CSV", use: "one row an attempt, for a spreadsheet" },
  { kind: "jobs", label: "Jobs as CSV", use: "changes, trouble and handovers, one row each" },
  { kind: "replay", label: "Replay lines", use: "every motion, for the command line (JSON Lines)" },
  { kind: "xapi", label: "xAPI statements", use: "for a learning record store (IEEE 9274.1.1, JSON)" },
];

/** A file ready to be saved. */
export interface ExportFile {
  readonly name: string;
  readonly type: string;
  readonly text: string;
  /** What is in it, in a sentence. */
  readonly told: string;
}

/** Of one person alone, her name; of more, none. */
function personOf({ records: { people } }: LogbookContents): string | null {
  return people.length === 1 ? (people[0]?.name ?? null) : null;
}

function savedWords({ records: { people, attempts, jobs } }: LogbookContents): string {
  const persons = countText(people.length, "person", "people");
  const dialed = countText(attempts.length, "attempt");
  return jobs.length === 0
    ? `Saved ${persons} and ${dialed}.`
    : `Saved ${persons}, ${dialed} and ${countText(jobs.length, "job")}.`;
}

type Writer = (contents: LogbookContents, now: number) => ExportFile;

const WRITERS: Readonly<Record<ExportKind, Writer>> = {
  logbook: (contents, now) => ({
    name: fileNameOf({ what: "logbook", person: personOf(contents), at: now, ending: "json" }),
    type: "application/json",
    text: writeLogbookFile(contents, now),
    told: savedWords(contents),
  }),
  csv: (contents, now) => ({
    name: fileNameOf({ what: "attempts", person: personOf(contents), at: now, ending: "csv" }),
    type: "text/csv",
    text: attemptsCsv(contents),
    told: `Saved ${countText(contents.records.attempts.length, "attempt")}.`,
  }),
  jobs: (contents, now) => ({
    name: fileNameOf({ what: "jobs", person: personOf(contents), at: now, ending: "csv" }),
    type: "text/csv",
    text: jobsCsv(contents),
    told: `Saved ${countText(contents.records.jobs.length, "job")}.`,
  }),
  replay: (contents, now) => {
    const { text, leftOut } = attemptsReplay(contents);
    const written = contents.records.attempts.length - leftOut;
    const aside = leftOut === 0 ? "" : ` ${leftOut} left out: no motion is kept, or the lock is not known here.`;
    return {
      name: fileNameOf({ what: "attempts", person: personOf(contents), at: now, ending: "jsonl" }),
      type: "application/x-ndjson",
      text,
      told: `Saved ${countText(written, "attempt")}.${aside}`,
    };
  },
  xapi: (contents, now) => {
    const statements = xapiStatements(contents);
    return {
      name: fileNameOf({ what: "xapi", person: personOf(contents), at: now, ending: "json" }),
      type: "application/json",
      text: JSON.stringify(statements, null, 1),
      told: `Saved ${countText(statements.length, "statement")}.`,
    };
  },
};

/**
 * A logbook, or one person's part of it, as a file.
 *
 * @param personId - null for everyone
 * @param now - milliseconds since 1970
 */
export function exportFile(
  kind: ExportKind,
  contents: LogbookContents,
  personId: string | null,
  now: number,
): ExportFile {
  return WRITERS[kind](personId === null ? contents : contentsOf(new Set([personId]), contents), now);
}
