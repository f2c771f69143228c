import { fieldProblem } from "../lock/fieldProblem";
import type { AttemptRecord } from "./attemptRecord";
import { endedAmong, withoutRevived, wouldUndoEnd } from "./endedStays";
import { type LogbookContents, NO_CONTENTS } from "./logbookContents";
import { attemptRow, type LogbookDatabase } from "./logbookDatabase";
import { LogbookError } from "./logbookError";
import { RECORD_SCHEMAS, type RecordKind, type RecordOf } from "./records";

type PlainKind = Exclude<RecordKind, "attempts">;

/** One record to be kept; an attempt comes with its packed motion, unless that is kept already. */
export type LogbookWrite =
  | { readonly kind: "attempts"; readonly record: AttemptRecord; readonly trace?: Uint8Array | undefined }
  | { readonly [Kind in PlainKind]: { readonly kind: Kind; readonly record: RecordOf[Kind] } }[PlainKind];

/**
 * Refuses a record that could not be read back.
 *
 * @throws {LogbookError} `bad-record` with a sentence that names the field
 */
export function checkWrite({ kind, record }: LogbookWrite): void {
  const parsed = RECORD_SCHEMAS[kind].safeParse(record);
  if (!parsed.success) {
    throw new LogbookError("bad-record", `${kind}: ${fieldProblem(parsed.error.issues, record)}`);
  }
}

/** Whether two writes are about one record. */
export function isSameRecord(one: LogbookWrite, other: LogbookWrite): boolean {
  return one.kind === other.kind && one.record.id === other.record.id;
}

/** Keeps one record, unless a later one with its id is there, or one that has ended. */
async function storeWrite(database: LogbookDatabase, write: LogbookWrite): Promise<void> {
  const existing = await database.table(write.kind).get(write.record.id);
  if (existing !== undefined && existing.updatedAt > write.record.updatedAt) return;
  if (existing !== undefined && wouldUndoEnd({ ...write, record: existing }, write)) return;
  if (write.kind !== "attempts") {
    await database.table(write.kind).put(write.record);
    return;
  }
  await database.attempts.put(attemptRow(write.record));
  if (write.trace) await database.traces.put({ id: write.record.id, bytes: write.trace });
}

/**
 * Keeps records that come together. What has ended stays as it ended, whatever still takes it as going on. To be called
 * within a transaction.
 *
 * @returns ids of sittings that a write took as going on, and that have ended: nothing of those was kept
 */
export async function storeWrites(
  database: LogbookDatabase,
  writes: readonly LogbookWrite[],
): Promise<ReadonlySet<string>> {
  const ended = await endedAmong(database, writes);
  for (const write of withoutRevived(writes, ended)) await storeWrite(database, write);
  return ended;
}

/** Writes as a logbook of their own; the later one where two have one id. */
export function contentsOfWrites(writes: readonly LogbookWrite[]): LogbookContents {
  const records = Object.fromEntries(
    Object.keys(NO_CONTENTS.records).map((kind) => [
      kind,
      writes.filter((write) => write.kind === kind).map(({ record }) => record),
    ]),
  ) as unknown as LogbookContents["records"];
  const traces = new Map<string, Uint8Array>();
  for (const write of writes) {
    if (write.kind === "attempts" && write.trace) traces.set(write.record.id, write.trace);
  }
  return { records, traces };
}

/** A list of writes with one more: it takes the place of an earlier one about the same record. */
export function withWrite(writes: readonly LogbookWrite[], write: LogbookWrite): LogbookWrite[] {
  const before = writes.find((one) => isSameRecord(one, write));
  if (before === undefined) return [...writes, write];
  if (before.record.updatedAt > write.record.updatedAt || wouldUndoEnd(before, write)) return [...writes];
  return [...writes.filter((one) => one !== before), withTraceOf(write, before)];
}

/** A changed attempt that brings no motion keeps the one that waits with it. */
function withTraceOf(write: LogbookWrite, before: LogbookWrite): LogbookWrite {
  const isBare = write.kind === "attempts" && write.trace === undefined && before.kind === "attempts";
  return isBare ? { ...write, trace: before.trace } : write;
}
