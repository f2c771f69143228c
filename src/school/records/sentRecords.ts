import * as z from "zod/mini";
import { canonicalJson } from "../../drill/canonicalJson";
import { DrillError } from "../../drill/drillError";
import { sha256Hex } from "../../drill/sha256";
import { fieldProblem } from "../../lock/fieldProblem";
import { anyText } from "../../lock/fieldSchemas";
import { mayKeepMotion } from "../../realdial/sources/sourceDescription";
import { turningMisfit } from "../../realdial/sources/sourcesMisfit";
import { isSameHash, recordHash } from "../../records/hashedRecord";
import { fromBase64 } from "../../records/motion/base64";
import { decodeTrace } from "../../records/motion/traceCodec";
import { MotionError } from "../../records/motionError";
import { readSittingRecord } from "../../records/sitting/readSittingRecord";
import { type Problem, under } from "../../wording/problem";
import { schoolProblem } from "../schoolWords";
import { type SentKind, type SentRecord, sentRecord } from "../wire/recordsWire";

/** A record that keeps every rule, as a server keeps it. */
export interface SoundRecord {
  readonly id: string;
  readonly kind: SentKind;
  readonly personId: string;
  /** When it was begun or declared, by the bench's clock. */
  readonly startedAt: number;
  /** Canonical JSON of the record. */
  readonly body: string;
  /** Packed; null where there is none. */
  readonly motion: Uint8Array | null;
  /** Of all of it. */
  readonly sha256: string;
}

/** What was sent, looked at: sound, or what is wrong with it. Its id is null where it has none. */
export type SentLookedAt = { readonly record: SoundRecord } | { readonly id: string | null; readonly problem: Problem };

const idSchema = z.object({ record: z.object({ id: anyText }) });

/** Letters of a value that a problem shows. */
const SHOWN = 100;

/** A problem with no more of what was found than a sentence shows: what was sent may be large. */
function briefly(problem: Problem): Problem {
  const { found, ...values } = problem.values;
  if (found === undefined) return problem;
  const text = JSON.stringify(found);
  return text.length <= SHOWN ? problem : { ...problem, values: { ...values, found: `${text.slice(0, SHOWN)}…` } };
}

/**
 * SHA-256 of what is kept of a record: of the canonical JSON of its kind, its body and the SHA-256 of its motion.
 *
 * @param body - canonical JSON
 * @param motion - base64, as it was sent
 */
export const keptHash = (kind: string, body: string, motion: string | null): string =>
  sha256Hex(canonicalJson([kind, sha256Hex(body), motion === null ? null : sha256Hex(motion)]));

/** Whether work goes on: it is sent when it has ended. */
const isUnderWay = (sent: SentRecord): boolean =>
  (sent.kind === "sittings" && sent.record.state === "running") ||
  (sent.kind === "attempts" && sent.record.isUnfinished === true);

/** What is wrong with the record of a sitting inside its row: it is read by its own schema, and has its own hash. */
function sittingProblem(body: unknown): Problem | null {
  try {
    const { record, sha256 } = readSittingRecord(body);
    return isSameHash(recordHash(record), sha256) ? null : schoolProblem("other-hash", ["record", "body"]);
  } catch (error) {
    if (error instanceof DrillError) return under(["record", "body"], error.problem);
    throw error;
  }
}

/** The motion of an attempt, which must be one that can be read. @throws {MotionError} */
function motionOf(sent: SentRecord): Uint8Array | null {
  if (sent.kind !== "attempts" || sent.motion === undefined) return null;
  const packed = fromBase64(sent.motion);
  decodeTrace(packed);
  return packed;
}

/** What no record may be, whatever its schema says; null where it keeps the rules. */
function ruleProblem(sent: SentRecord): Problem | null {
  if (isUnderWay(sent)) return schoolProblem("not-ended", ["record"]);
  const misfit = sent.kind === "sittings" ? null : turningMisfit(sent.record);
  if (misfit !== null) return schoolProblem(misfit, ["record"]);
  if (sent.kind === "attempts" && sent.motion !== undefined && !mayKeepMotion(sent.record)) {
    return schoolProblem("motion-not-wanted", ["motion"]);
  }
  return sent.kind === "sittings" ? sittingProblem(sent.record.body) : null;
}

function soundOf(sent: SentRecord): SoundRecord {
  const { kind, record } = sent;
  const motion = motionOf(sent);
  const body = canonicalJson(record);
  return {
    id: record.id,
    kind,
    personId: record.personId,
    startedAt: "declaredAt" in record ? record.declaredAt : record.startedAt,
    body,
    motion,
    sha256: keptHash(kind, body, sent.kind === "attempts" ? (sent.motion ?? null) : null),
  };
}

function looked(value: unknown): SoundRecord | Problem {
  try {
    const parsed = sentRecord.safeParse(value);
    if (!parsed.success) return fieldProblem(parsed.error.issues, value);
    return ruleProblem(parsed.data) ?? soundOf(parsed.data);
  } catch (error) {
    if (error instanceof MotionError) return under(["motion"], error.problem);
    // What is nested too deep for one of the steps above.
    return schoolProblem("record-too-deep", ["record"]);
  }
}

/**
 * Looks at one record that a bench sent: by its schema, and by every rule of records that needs no database.
 *
 * Fields that the schema does not know are left out. Never throws.
 */
export function lookedAt(value: unknown): SentLookedAt {
  const found = looked(value);
  if ("sha256" in found) return { record: found };
  return { id: idSchema.safeParse(value).data?.record.id ?? null, problem: briefly(found) };
}
