import { fieldProblem } from "../lock/fieldProblem";
import { mayKeepMotion } from "../realdial/sources/sourceDescription";
import type { AttemptRecord } from "../records/attemptRecord";
import { type LogbookContents, NO_CONTENTS } from "../records/logbookContents";
import { RecordError } from "../records/recordError";
import { type PersonRecord, RECORD_SCHEMAS, type RecordKind, type RecordOf } from "../records/records";
import { wouldUndoEnd } from "./endedStays";

type PlainKind = Exclude<RecordKind, "attempts" | "people">;

/**
 * A person to be kept: always, only where the person is gone, or only where nobody but invented people is there. The last
 * is for a name that nobody chose: two tabs that begin together must not make two people.
 */
export interface PersonWrite {
  readonly kind: "people";
  readonly record: PersonRecord;
  readonly only?: "if-missing" | "if-nobody" | undefined;
}

/** One record to be kept; an attempt comes with its packed motion, unless that is kept already. */
export type LogbookWrite =
  | PersonWrite
  | { readonly kind: "attempts"; readonly record: AttemptRecord; readonly trace?: Uint8Array | undefined }
  | { readonly [Kind in PlainKind]: { readonly kind: Kind; readonly record: RecordOf[Kind] } }[PlainKind];

/**
 * Refuses a record that could not be read back.
 *
 * @throws {RecordError} that names the field
 */
export function checkWrite({ kind, record }: LogbookWrite): void {
  const parsed = RECORD_SCHEMAS[kind].safeParse(record);
  if (!parsed.success) {
    throw new RecordError(fieldProblem(parsed.error.issues, record), kind);
  }
}

/** Whose record it is; undefined for a person, a sheet, a setting of the machine. */
export function ownerOf({ kind, record }: LogbookWrite): string | undefined {
  return kind !== "people" && "personId" in record ? record.personId : undefined;
}

/** Whether two writes are about one record. */
export function isSameRecord(one: LogbookWrite, other: LogbookWrite): boolean {
  return one.kind === other.kind && one.record.id === other.record.id;
}

/** Writes as a logbook of their own. */
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

/** A list of writes with one more: it takes the place of an earlier one about the same record, unless that has ended. */
export function withWrite(writes: readonly LogbookWrite[], write: LogbookWrite): LogbookWrite[] {
  const before = writes.find((one) => isSameRecord(one, write));
  if (before === undefined) return [...writes, write];
  const isLess = write.kind === "people" && write.only !== undefined;
  if (isLess || wouldUndoEnd(before, write)) return [...writes];
  return writes.map((one) => (one === before ? withTraceOf(write, before) : one));
}

/** A changed attempt that brings no motion keeps the one that waits with it, but for one of which none may be kept. */
function withTraceOf(write: LogbookWrite, before: LogbookWrite): LogbookWrite {
  const isBare = write.kind === "attempts" && write.trace === undefined && before.kind === "attempts";
  return isBare && mayKeepMotion(write.record) ? { ...write, trace: before.trace } : write;
}
