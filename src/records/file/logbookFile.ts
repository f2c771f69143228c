import { FileError, fileError } from "../fileWords";
import type { LogbookContents } from "../logbookContents";
import { toBase64 } from "../motion/base64";
import {
  checkedHead,
  FILE_KINDS,
  FILE_VERSION,
  FORMAT,
  LogbookReading,
  type ReadLogbook,
  refuseTooMany,
  WHOLE,
} from "./logbookReading";

/** Version that a logbook is written as: an earlier trainer must refuse jobs, not leave them out without a word. */
const versionFor = ({ records }: LogbookContents) => (records.jobs.length > 0 ? FILE_VERSION : 1);

/** How far the reading of a file is: its text is taken apart, its records are checked, then the attempts with their motions. */
export type ReadingProgress =
  | { readonly stage: "opening" | "checking" }
  | { readonly stage: "motions" | "replaying"; readonly done: number; readonly total: number };

/** Attempts from one word about them to the next. */
const TOLD_EVERY = 100;

/**
 * Writes a logbook, or part of one, as a file.
 *
 * @param now - time of the export, milliseconds since 1970
 * @returns JSON
 */
export function writeLogbookFile(contents: LogbookContents, now: number): string {
  const { records, traces } = contents;
  const attempts = records.attempts.map((attempt) => {
    const trace = traces.get(attempt.id);
    return trace === undefined ? attempt : { ...attempt, trace: toBase64(trace) };
  });
  // A handover under way goes on only where it was begun.
  const { handoverRuns: _here, ...shared } = records;
  return JSON.stringify({ format: FORMAT, version: versionFor(contents), exportedAt: now, ...shared, attempts });
}

type Tell = (progress: ReadingProgress) => void;

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw fileError("not-json", []);
  }
}

/** Hands every record of a file that was parsed as a whole to its reading. */
function readLists(file: Readonly<Record<string, unknown>>, reading: LogbookReading, tell: Tell): void {
  for (const kind of FILE_KINDS) {
    const list = file[kind] === undefined ? [] : file[kind];
    if (!Array.isArray(list)) {
      reading.noList(kind);
      continue;
    }
    refuseTooMany(kind, list.length);
    list.forEach((value: unknown, done) => {
      if (kind === "attempts" && done % TOLD_EVERY === 0) tell({ stage: "motions", done, total: list.length });
      reading.record(kind, value, done);
    });
  }
}

/**
 * Reads a logbook file from outside: what is sound is taken, what can be repaired is, and the rest is left out and named.
 *
 * @param text - of a file that may be anything
 * @param tell - hears how far it is
 * @param isReplayed - whether `replayedLogbook` comes after it, which names attempts that nothing can have turned so
 * @throws {FileError} for a file that is no logbook, naming why; nothing else, whatever the text
 */
export function readLogbookFile(text: string, tell: Tell = () => {}, isReplayed = false): ReadLogbook {
  try {
    tell({ stage: "opening" });
    const file = checkedHead(parsedJson(text));
    tell({ stage: "checking" });
    const reading = new LogbookReading(() => text.length, { ...WHOLE, isReplayed });
    readLists(file, reading, tell);
    return reading.end(file);
  } catch (error) {
    throw error instanceof FileError ? error : fileError("too-deep", []);
  }
}
