import * as z from "zod/mini";
import { fieldProblem } from "../../lock/fieldProblem";
import type { Problem } from "../../wording/problem";
import { FileError, fileError, fileProblem, unreadable } from "../fileWords";
import { replaces } from "../logbookContents";
import { fromBase64 } from "../motion/base64";
import { decodeTrace, unpackedSize } from "../motion/traceCodec";
import { RECORD_SCHEMAS, type RecordKind, type RecordOf } from "../records";
import type { Remarks } from "./remarks";

/** Records that one list of a file may have: more would hold up the page for minutes. */
export const MOST_RECORDS = 200_000;

const idSchema = z.object({ id: z.string() });

const shortId = (id: string) => id.slice(0, 40);

/** A record of a file, or null where it is none; then it is remarked. */
function readRecord<Kind extends RecordKind>(
  kind: Kind,
  value: unknown,
  place: number,
  remarks: Remarks,
): RecordOf[Kind] | null {
  const leaveOut = (why: Problem) => {
    const { data } = idSchema.safeParse(value);
    const path = [kind, place];
    if (data === undefined) remarks.add(fileProblem("left-out", path, { why }));
    else remarks.add(fileProblem("left-out-by-id", path, { why, id: shortId(data.id) }));
    return null;
  };
  try {
    const parsed = RECORD_SCHEMAS[kind].safeParse(value);
    if (parsed.success) return parsed.data as RecordOf[Kind];
    return leaveOut(fieldProblem(parsed.error.issues, value));
  } catch {
    return leaveOut(fileProblem("record-too-deep", []));
  }
}

/** A record with its place in the list of the file. */
interface Placed<Kind extends RecordKind> {
  readonly record: RecordOf[Kind];
  readonly place: number;
}

/** Each id once: of two with one id the one that was written more often, or later. */
function single<Kind extends RecordKind>(
  kind: Kind,
  placed: readonly Placed<Kind>[],
  remarks: Remarks,
): Placed<Kind>[] {
  const byId = new Map<string, Placed<Kind>>();
  for (const one of placed) {
    const before = byId.get(one.record.id);
    if (before !== undefined) remarks.add(fileProblem("same-id", [kind, one.place], { id: one.record.id }));
    if (replaces(one.record, before?.record)) byId.set(one.record.id, one);
  }
  return [...byId.values()];
}

/**
 * The sound records of one list of a file.
 *
 * @param value - of the list, whatever it is; undefined where the file has none
 * @param remarks - hears of everything that is left out
 * @throws {FileError} for a list that is far too long
 */
export function readRecords<Kind extends RecordKind>(kind: Kind, value: unknown, remarks: Remarks): Placed<Kind>[] {
  if (value === undefined) return [];
  if (!Array.isArray(value)) {
    remarks.add(fileProblem("list-left-out", [kind]));
    return [];
  }
  if (value.length > MOST_RECORDS) throw fileError("too-many", [], { count: value.length, kind, most: MOST_RECORDS });
  const placed = value.flatMap((one: unknown, place): Placed<Kind>[] => {
    const record = readRecord(kind, one, place, remarks);
    return record === null ? [] : [{ record, place }];
  });
  return single(kind, placed, remarks);
}

/** Room that motions of a file may take when they are unpacked: many times what real ones take, bytes. */
const roomFor = (characters: number) => Math.max(64e6, 60 * characters);

const traceSchema = z.object({ trace: z.optional(z.unknown()) });

/** Reads the motions of a file one by one, each into bounded room, all into a room that fits the size of the file. */
export class MotionReader {
  private room: number;
  private readonly remarks: Remarks;

  /** @param characters - length of the file */
  constructor(characters: number, remarks: Remarks) {
    this.room = roomFor(characters);
    this.remarks = remarks;
  }

  /** The packed motion of an attempt of the file; undefined where it has none, or none that can be read. */
  read(value: unknown, place: number, id: string): Uint8Array | undefined {
    const trace = traceSchema.safeParse(value).data?.trace;
    if (trace === undefined) return undefined;
    try {
      if (typeof trace !== "string") throw unreadable("trace-not-text");
      const bytes = fromBase64(trace);
      this.room -= unpackedSize(bytes);
      if (this.room < 0) throw fileError("traces-too-large", []);
      decodeTrace(bytes);
      return bytes;
    } catch (error) {
      const { problem: why } = error instanceof FileError ? error : unreadable("trace-damaged");
      this.remarks.add(fileProblem("without-motion", ["attempts", place], { id: shortId(id), why }));
      return undefined;
    }
  }
}
