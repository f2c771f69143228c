import * as z from "zod/mini";
import type { Motion } from "../../dialing/motion";
import { fieldProblem } from "../../lock/fieldProblem";
import { anyText } from "../../lock/fieldSchemas";
import type { Problem } from "../../wording/problem";
import { fileError, fileProblem } from "../fileWords";
import { replaces } from "../logbookContents";
import { fromBase64 } from "../motion/base64";
import { decodeTrace, unpackedSize } from "../motion/traceCodec";
import { MotionError, unreadable } from "../motionError";
import { RECORD_SCHEMAS, type RecordKind, type RecordOf } from "../records";
import type { Remarks } from "./remarks";

const idSchema = z.object({ id: anyText });

/** An id as far as a sentence shows it. */
export const shortId = (id: string) => id.slice(0, 40);

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

/** The sound records of one list of a file, as they come: each id once. Mutable. */
export class RecordList<Kind extends RecordKind> {
  private readonly kind: Kind;
  private readonly remarks: Remarks;
  private readonly byId = new Map<string, RecordOf[Kind]>();

  /** @param remarks - hears of everything that is left out */
  constructor(kind: Kind, remarks: Remarks) {
    this.kind = kind;
    this.remarks = remarks;
  }

  /**
   * A record of the list: of two with one id the one that was written more often, or later, is taken.
   *
   * @param value - whatever the file has there
   * @param hold - gives what is held of it
   * @returns whether it was taken
   */
  add(value: unknown, place: number, hold: (record: RecordOf[Kind]) => RecordOf[Kind]): boolean {
    const record = readRecord(this.kind, value, place, this.remarks);
    if (record === null) return false;
    const before = this.byId.get(record.id);
    if (before !== undefined) this.remarks.add(fileProblem("same-id", [this.kind, place], { id: record.id }));
    if (!replaces(record, before)) return false;
    this.byId.set(record.id, hold(record));
    return true;
  }

  get records(): RecordOf[Kind][] {
    return [...this.byId.values()];
  }
}

/** Room that motions of a file may take when they are unpacked: many times what real ones take, bytes. */
const roomFor = (characters: number) => Math.max(64e6, 60 * characters);

/** The motion of an attempt, as it is packed and as it was made. */
export interface FileMotion {
  readonly packed: Uint8Array;
  readonly motion: Motion;
}

const traceSchema = z.object({ trace: z.optional(z.unknown()) });
const traceOf = (value: unknown) => traceSchema.safeParse(value).data?.trace;

/** Reads the motions of a file one by one, each into bounded room, all into a room that fits the size of the file. */
export class MotionReader {
  private taken_bytes = 0;
  private readonly characters: () => number;
  private readonly remarks: Remarks;

  /** @param characters - length of the file, as far as it is known */
  constructor(characters: () => number, remarks: Remarks) {
    this.characters = characters;
    this.remarks = remarks;
  }

  /** The motion of an attempt of the file; undefined where it has none, or none that can be read. */
  read(value: unknown, place: number, id: string): FileMotion | undefined {
    const trace = traceOf(value);
    if (trace === undefined) return undefined;
    try {
      if (typeof trace !== "string") throw unreadable("trace-not-text");
      const packed = fromBase64(trace);
      this.taken_bytes += unpackedSize(packed);
      if (this.taken_bytes > roomFor(this.characters())) throw fileError("traces-too-large", []);
      return { packed, motion: decodeTrace(packed) };
    } catch (error) {
      const { problem: why } = error instanceof MotionError ? error : unreadable("trace-damaged");
      return this.without(why, place, id);
    }
  }

  /** Passes over the motion of an attempt whose record says that none is kept of it. */
  passOver(value: unknown, place: number, id: string): undefined {
    if (traceOf(value) !== undefined) this.without(fileProblem("motion-against-choice", []), place, id);
  }

  private without(why: Problem, place: number, id: string): undefined {
    this.remarks.add(fileProblem("without-motion", ["attempts", place], { id: shortId(id), why }));
  }
}
