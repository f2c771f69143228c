import { canonicalJson } from "../drill/canonicalJson";
import { sha256Hex } from "../drill/sha256";
import { RecordError } from "./recordError";
import { recordProblem } from "./recordWords";

/** A record with the SHA-256 that was made from it. */
export interface HashedRecord<Kept> {
  /** As printed with the record, 64 hexadecimal digits in either case. */
  readonly sha256: string;
  readonly record: Kept;
}

/** A kind of record: how its format is named in it, and in a sentence. */
export interface RecordKind {
  readonly format: string;
  readonly words: string;
}

/** What to say of a record that was brought to the wrong place, by its format: where it is checked. */
const CHECKED_AT: ReadonlyMap<unknown, "sitting-elsewhere" | "handover-elsewhere"> = new Map([
  ["gatefall-sitting", "sitting-elsewhere"],
  ["gatefall-handover-record", "handover-elsewhere"],
] as const);

/** What every change of a record that its hash was not made for comes to, of whatever kind of record. */
export const CHANGED = "The record is not the one that the hash was made from: it or the hash was changed.";

/** SHA-256 of a record: of its canonical JSON, so that neither order of keys nor white space matters. */
export const recordHash = (record: object): string => sha256Hex(canonicalJson(record));

/** Whether a hash is the one that was made now. @param hash - in either case, as typed off a print */
export const isSameHash = (made: string, hash: string): boolean => made === hash.trim().toLowerCase();

/** A record and its hash as the text of a file. */
export function writeHashed<Kept>({ sha256, record }: HashedRecord<Kept>): string {
  return `${JSON.stringify({ sha256, record }, null, 2)}\n`;
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

/**
 * Reads a record with its hash from outside, as far as every kind of record is the same: its own fields are not looked at.
 *
 * @throws {RecordError} for what is no such record
 */
export function readHashed(value: unknown, { format, words }: RecordKind): HashedRecord<object> {
  if (!isObject(value)) throw new RecordError(recordProblem("not-a-record", [], { kind: words }));
  const { record, sha256 } = value;
  if (!isObject(record) || record.format !== format || record.version !== 1) {
    const other = isObject(record) && record.format !== format ? CHECKED_AT.get(record.format) : undefined;
    throw new RecordError(recordProblem(other ?? "no-such-record", [], { kind: words }));
  }
  if (typeof sha256 !== "string") throw new RecordError(recordProblem("no-hash", []));
  return { record, sha256 };
}

/** JSON of a text, or null where it is none. */
export function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
