import * as z from "zod/mini";
import type { Problem } from "../../wording/problem";
import { moment } from "../fields";
import { FileError, fileError, fileProblem } from "../fileWords";
import { judgedJob } from "../jobRight";
import type { LogbookContents } from "../logbookContents";
import { toBase64 } from "../motion/base64";
import { missingOwners, withOwners } from "../owners";
import type { RecordKind, RecordOf } from "../records";
import { MotionReader, readRecords } from "./fileRecords";
import { Remarks } from "./remarks";

/** What an export calls itself. */
const FORMAT = "gatefall-logbook";

/** Latest version of the file. A logbook without jobs is written as version 1, which earlier trainers read as well. */
export const FILE_VERSION = 2;

/** Version that a logbook is written as: an earlier trainer must refuse jobs, not leave them out without a word. */
const versionFor = ({ records }: LogbookContents) => (records.jobs.length > 0 ? FILE_VERSION : 1);

/** How far the reading of a file is: its text is taken apart, its records are checked, then the motions one by one. */
export type ReadingProgress =
  | { readonly stage: "opening" | "checking" }
  | { readonly stage: "motions" | "replaying"; readonly done: number; readonly total: number };

/** A logbook from a file, and what was repaired or left out. */
export interface ReadLogbook extends LogbookContents {
  readonly remarks: readonly Problem[];
}

/** Motions from one word about them to the next. */
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

const headSchema = z.looseObject({ format: z.unknown(), version: z.unknown() });
const timeSchema = z.object({ exportedAt: moment });

type FileObject = z.infer<typeof headSchema>;

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw fileError("not-json", []);
  }
}

/** Refuses another format by name, before its fields are looked at. */
function checkedHead(value: unknown): FileObject {
  const { data } = headSchema.safeParse(value);
  const version = data?.version;
  if (data?.format !== FORMAT) throw fileError("other-format", [], { format: FORMAT });
  const latest = FILE_VERSION;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1)
    throw fileError("no-version", [], { latest });
  if (version > latest) throw fileError("later-version", [], { version, latest });
  return data;
}

type Tell = (progress: ReadingProgress) => void;

/** Attempts with their motions; each motion is looked at to its end. */
function readAttempts(file: FileObject, characters: number, remarks: Remarks, tell: Tell) {
  const placed = readRecords("attempts", file.attempts, remarks);
  const list = Array.isArray(file.attempts) ? file.attempts : [];
  const reader = new MotionReader(characters, remarks);
  const traces = new Map<string, Uint8Array>();
  placed.forEach(({ record, place }, done) => {
    if (done % TOLD_EVERY === 0) tell({ stage: "motions", done, total: placed.length });
    const bytes = reader.read(list[place], place, record.id);
    if (bytes !== undefined) traces.set(record.id, bytes);
  });
  return { attempts: placed.map(({ record }) => record), traces };
}

/** Every record has its person; who is not in the file gets a name that says so. */
function withEveryPerson(contents: LogbookContents, remarks: Remarks): LogbookContents {
  const whole = withOwners(contents, new Map());
  for (const id of missingOwners(contents).keys()) {
    const name = whole.records.people.find((one) => one.id === id)?.name;
    remarks.add(fileProblem("owner-missing", [], { id, name }));
  }
  return whole;
}

function readParsed(value: unknown, characters: number, tell: Tell): ReadLogbook {
  const file = checkedHead(value);
  tell({ stage: "checking" });
  const remarks = new Remarks();
  if (!timeSchema.safeParse(file).success) remarks.add(fileProblem("no-export-time", []));
  const all = <Kind extends RecordKind>(kind: Kind): RecordOf[Kind][] =>
    readRecords(kind, file[kind], remarks).map(({ record }) => record);
  const jobs = all("jobs");
  const judged = jobs.map(judgedJob);
  const corrected = judged.filter(({ isRight }, k) => isRight !== jobs[k]?.isRight).length;
  if (corrected > 0) remarks.add(fileProblem("jobs-judged", [], { count: corrected }));
  const others = {
    people: all("people"),
    zeroings: all("zeroings"),
    jobs: judged,
    sittings: all("sittings"),
    sheets: all("sheets"),
    settings: all("settings"),
    declarations: all("declarations"),
    handoverRuns: [],
  };
  const { attempts, traces } = readAttempts(file, characters, remarks, tell);
  const whole = withEveryPerson({ records: { ...others, attempts }, traces }, remarks);
  return { ...whole, remarks: remarks.all };
}

/**
 * Reads a logbook file from outside: what is sound is taken, what can be repaired is, and the rest is left out and named.
 *
 * @param text - of a file that may be anything
 * @param tell - hears how far it is
 * @throws {FileError} for a file that is no logbook, naming why; nothing else, whatever the text
 */
export function readLogbookFile(text: string, tell: Tell = () => {}): ReadLogbook {
  return readLogbook(
    () => {
      tell({ stage: "opening" });
      return parsedJson(text);
    },
    text.length,
    tell,
  );
}

/**
 * As `readLogbookFile`, for a file that was parsed before.
 *
 * @param characters - of its text: the most that its motions may unpack to hangs on them
 * @throws {FileError} for what is no logbook
 */
export const readLogbookValue = (value: unknown, characters: number): ReadLogbook =>
  readLogbook(
    () => value,
    characters,
    () => {},
  );

function readLogbook(parsed: () => unknown, characters: number, tell: Tell): ReadLogbook {
  try {
    return readParsed(parsed(), characters, tell);
  } catch (error) {
    throw error instanceof FileError ? error : fileError("too-deep", []);
  }
}
