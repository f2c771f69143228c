import * as z from "zod/mini";
import { fieldProblem } from "../lock/fieldProblem";
import { attemptSchema } from "./attemptRecord";
import { fromBase64, toBase64 } from "./base64";
import { moment } from "./fields";
import { judgedJob } from "./jobRight";
import { type LogbookContents, NO_CONTENTS } from "./logbookContents";
import { LogbookError } from "./logbookError";
import { PERSONAL_KINDS, RECORD_SCHEMAS, type RecordKind } from "./records";
import { decodeTrace } from "./traceCodec";

/** What an export calls itself. */
const FORMAT = "gatefall-logbook";

/** Latest version of the file. A logbook without jobs is written as version 1, which earlier trainers read as well. */
export const FILE_VERSION = 2;

/** Version that a logbook is written as: an earlier trainer must refuse jobs, not leave them out without a word. */
const versionFor = ({ records }: LogbookContents) => (records.jobs.length > 0 ? FILE_VERSION : 1);

const list = <Record extends z.core.SomeType>(record: Record, words: string) =>
  z._default(z.array(record, { error: `must be a list of ${words}` }), []);

const attemptInFile = z.extend(attemptSchema, {
  /** The packed motion, base64; left out where none is kept. */
  trace: z.optional(
    z
      .string({ error: "must be a trace in base64" })
      .check(z.maxLength(4e6, { error: "must be a trace of at most 4 MB" })),
  ),
});

const fileSchema = z.object(
  {
    exportedAt: moment,
    people: list(RECORD_SCHEMAS.people, "people"),
    attempts: list(attemptInFile, "attempts"),
    zeroings: list(RECORD_SCHEMAS.zeroings, "zeroings"),
    jobs: list(RECORD_SCHEMAS.jobs, "jobs"),
    sittings: list(RECORD_SCHEMAS.sittings, "sittings"),
    sheets: list(RECORD_SCHEMAS.sheets, "drill sheets"),
    settings: list(RECORD_SCHEMAS.settings, "settings"),
    declarations: list(RECORD_SCHEMAS.declarations, "declarations"),
  },
  { error: "must be a logbook" },
);

type LogbookFile = z.infer<typeof fileSchema> & Pick<LogbookContents["records"], "handoverRuns">;

/** How far the reading of a file is: its text is taken apart, its records are checked, then the motions one by one. */
export type ReadingProgress =
  | { readonly stage: "opening" | "checking" }
  | { readonly stage: "motions" | "replaying"; readonly done: number; readonly total: number };

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

const bad = (message: string, cause?: unknown) => new LogbookError("bad-file", message, { cause });

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw bad("This file is no logbook: it is not one whole JSON value.", error);
  }
}

/** Refuses another format by name, before its fields are looked at. */
function checkHead(value: unknown): void {
  const { format, version } = (typeof value === "object" && value !== null ? value : {}) as Record<string, unknown>;
  if (format !== FORMAT) throw bad(`This file is no logbook: its "format" is not "${FORMAT}".`);
  if (typeof version === "number" && Number.isInteger(version) && version > FILE_VERSION) {
    throw bad(
      `This logbook is of version ${version}, and this trainer reads up to ${FILE_VERSION}: get the newer one.`,
    );
  }
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1)
    throw bad(`This logbook names no version that there is; "version" must be 1 to ${FILE_VERSION}.`);
}

type Tell = (progress: ReadingProgress) => void;

function tracesOf({ attempts }: LogbookFile, tell: Tell): Map<string, Uint8Array> {
  const traces = new Map<string, Uint8Array>();
  attempts.forEach(({ id, trace }, i) => {
    if (i % TOLD_EVERY === 0) tell({ stage: "motions", done: i, total: attempts.length });
    if (trace === undefined) return;
    try {
      const bytes = fromBase64(trace);
      decodeTrace(bytes);
      traces.set(id, bytes);
    } catch (error) {
      const why = error instanceof Error ? error.message : "";
      throw bad(`attempts[${i}].trace is damaged. ${why}`, error);
    }
  });
  return traces;
}

/** Refuses records that belong to nobody: no screen would ever show them. */
function checkOwners(file: LogbookFile): void {
  const people = new Set(file.people.map(({ id }) => id));
  for (const kind of PERSONAL_KINDS) {
    const index = file[kind].findIndex(({ personId }) => !people.has(personId));
    if (index >= 0) {
      throw bad(`${kind}[${index}].personId names nobody in "people", "${file[kind][index]?.personId}".`);
    }
  }
}

/** Refuses one id twice in a list: which of the two is meant nobody can say. */
function checkIds(file: LogbookFile): void {
  for (const kind of Object.keys(NO_CONTENTS.records) as RecordKind[]) {
    const seen = new Set<string>();
    file[kind].forEach(({ id }, i) => {
      if (seen.has(id)) throw bad(`${kind}[${i}].id is there twice, "${id}".`);
      seen.add(id);
    });
  }
}

function readFile(text: string, tell: Tell): LogbookContents {
  tell({ stage: "opening" });
  const value = parsedJson(text);
  checkHead(value);
  tell({ stage: "checking" });
  const parsed = fileSchema.safeParse(value);
  if (!parsed.success) throw bad(`This logbook cannot be read: ${fieldProblem(parsed.error.issues, value)}.`);
  const file: LogbookFile = { ...parsed.data, handoverRuns: [] };
  checkIds(file);
  checkOwners(file);
  const { exportedAt: _exportedAt, attempts, jobs, ...records } = file;
  return {
    records: {
      ...records,
      attempts: attempts.map(({ trace: _trace, ...attempt }) => attempt),
      jobs: jobs.map(judgedJob),
    },
    traces: tracesOf(file, tell),
  };
}

/**
 * Reads a logbook file from outside.
 *
 * @param text - of a file that may be anything
 * @param tell - hears how far it is
 * @throws {LogbookError} `bad-file`, naming what is wrong; nothing else, whatever the text
 */
export function readLogbookFile(text: string, tell: Tell = () => {}): LogbookContents {
  try {
    return readFile(text, tell);
  } catch (error) {
    if (error instanceof LogbookError) throw error;
    throw bad("This logbook cannot be read: it is nested too deep, or too large for this browser.", error);
  }
}
