import * as z from "zod/mini";
import { fieldProblem } from "../../lock/fieldProblem";
import { problemText } from "../../wording/problem";
import { replaces } from "../logbookContents";
import { LogbookError } from "../logbookError";
import { decodeTrace, unpackedSize } from "../motion/traceCodec";
import { RECORD_SCHEMAS, type RecordKind, type RecordOf } from "../records";
import { RECORD_WORDS } from "../recordWords";
import { fromBase64 } from "./base64";
import type { Remarks } from "./remarks";

/** Records that one list of a file may have: more would hold up the page for minutes. */
export const MOST_RECORDS = 200_000;

const idSchema = z.object({ id: z.string() });

/** How a record of a file is named to a person: its place, and its id where it has one. */
function nameOf(kind: RecordKind, place: number, value: unknown): string {
  const { data } = idSchema.safeParse(value);
  return data === undefined ? `${kind}[${place}]` : `${kind}[${place}] (id ${data.id.slice(0, 40)})`;
}

/** A record of a file, or null where it is none; then it is remarked. */
function readRecord<Kind extends RecordKind>(
  kind: Kind,
  value: unknown,
  place: number,
  remarks: Remarks,
): RecordOf[Kind] | null {
  const leaveOut = (why: string) => {
    remarks.add(`${nameOf(kind, place, value)} is left out: ${why}.`);
    return null;
  };
  try {
    const parsed = RECORD_SCHEMAS[kind].safeParse(value);
    if (parsed.success) return parsed.data as RecordOf[Kind];
    return leaveOut(problemText(fieldProblem(parsed.error.issues, value), RECORD_WORDS));
  } catch {
    return leaveOut("it is nested too deep");
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
    if (before !== undefined)
      remarks.add(
        `${kind}[${one.place}] has the same id as another record, "${one.record.id}": the later one is taken.`,
      );
    if (replaces(one.record, before?.record)) byId.set(one.record.id, one);
  }
  return [...byId.values()];
}

/**
 * The sound records of one list of a file.
 *
 * @param value - of the list, whatever it is; undefined where the file has none
 * @param remarks - hears of everything that is left out
 * @throws {LogbookError} `bad-file` for a list that is far too long
 */
export function readRecords<Kind extends RecordKind>(kind: Kind, value: unknown, remarks: Remarks): Placed<Kind>[] {
  if (value === undefined) return [];
  if (!Array.isArray(value)) {
    remarks.add(`${kind} is left out: it must be a list.`);
    return [];
  }
  if (value.length > MOST_RECORDS) {
    throw new LogbookError(
      "bad-file",
      `This logbook has ${value.length} ${kind}, and at most ${MOST_RECORDS} can be read. Export it in parts, one person at a time.`,
    );
  }
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
  read(value: unknown, place: number): Uint8Array | undefined {
    const trace = traceSchema.safeParse(value).data?.trace;
    if (trace === undefined) return undefined;
    try {
      if (typeof trace !== "string") throw new LogbookError("bad-trace", "It is no text.");
      const bytes = fromBase64(trace);
      this.room -= unpackedSize(bytes);
      if (this.room < 0)
        throw new LogbookError("bad-trace", "The motions of this file unpack to far more than its size.");
      decodeTrace(bytes);
      return bytes;
    } catch (error) {
      const why = error instanceof LogbookError ? ` ${error.message}` : "";
      this.remarks.add(`${nameOf("attempts", place, value)} is taken without its motion.${why}`);
      return undefined;
    }
  }
}
