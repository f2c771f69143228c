import * as z from "zod/mini";
import type { HandoverResult } from "../../handover/run/checkRun";
import { REQUIRED_PROOFS, type RequiredProof } from "../../handover/run/rules/proofs";
import { RunError } from "../../handover/run/rules/runError";
import type { Graduations } from "../../lock/dial";
import { fieldProblem } from "../../lock/fieldProblem";
import { flag, must, number, shortList, anyText as text } from "../../lock/fieldSchemas";
import { type DialDoubt, doubtsSchema } from "../../realdial/sources/dialDoubt";
import type { SourceDescription } from "../../realdial/sources/sourceDescription";
import { sourcesSchema } from "../../realdial/sources/sourceSchema";
import { NOTICE } from "../sitting/sittingRecord";
import { CHANGE_SENTENCES, CHANGE_SOURCE, isCalendarDate, nextChangeDue } from "./nextChange";
import type { RecordForm } from "./recordForm";

/** How good a zero was set, mean deviation of each side. */
export interface RecordedZero {
  readonly right: Graduations;
  readonly left: Graduations;
}

/** What is put on record when a door is handed over; the date comes with the form. */
export interface RecordFacts {
  readonly form: RecordForm;
  readonly profileId: string;
  readonly seed: number;
  /** The rule by which its door follows from the seed, as the run promises it. */
  readonly drawnBy?: 1 | undefined;
  readonly result: HandoverResult;
  /** Null for a wheel pack, whose ring's alignment stands for it, and where a simulated hand set it. */
  readonly zero: RecordedZero | null;
  /** What turned the dial; left out where the hands on the screen alone did, or a simulated hand. */
  readonly sources?: readonly SourceDescription[] | undefined;
  /** Why its turns may be miscounted; left out where nothing speaks for that. */
  readonly doubts?: readonly DialDoubt[] | undefined;
  /** Height of the dial's middle, inches. */
  readonly height_in: number;
}

/** Far more than there are proofs, faults or reasons to change. */
const MOST = 1000;

const recordSchema = z.object(
  {
    format: z.literal("gatefall-handover-record", must("one-of", { choices: ["gatefall-handover-record"] })),
    version: z.literal(1, must("only-version", { version: 1 })),
    notice: text,
    technician: text,
    second: text,
    takenOverBy: text,
    authorizedBy: text,
    lock: text,
    door: text,
    date: text.check(z.refine(isCalendarDate, must("date", { example: "2026-11-26" }))),
    holders: text,
    remarks: text,
    profileId: text,
    seed: number,
    drawnBy: z.optional(z.literal(1, must("only-version", { version: 1 }))),
    height_in: number,
    zero: z.nullable(z.object({ right: number, left: number })),
    /** What was shown, in the order of the job. */
    proofs: shortList(z.object({ code: text, isShown: flag }), MOST),
    faults: number,
    undoneFaults: number,
    duration_ms: number,
    isHandsOff: flag,
    /** What turned the dial, where that was not the hands on the screen alone. */
    sources: sourcesSchema,
    /** Why its turns may be miscounted; left out where nothing speaks for that, and in records of earlier versions. */
    doubts: doubtsSchema,
    /** How the lock is fitted, by codes; left out where it came on its door. */
    fit: z.optional(z.object({ faults: shortList(text, MOST), skipped: shortList(text, MOST) })),
    nextChangeDue: text,
    changeWhen: shortList(text, MOST),
    changeSource: text,
  },
  must("object"),
);

/** The record of a handover: plain JSON, whole in itself, without the combination. */
export type HandoverRecord = Readonly<z.infer<typeof recordSchema>>;

/** What must be shown of a door. @param isFitted - whether its lock was fitted in the run */
export const proofsWanted = (isFitted: boolean): readonly RequiredProof[] =>
  REQUIRED_PROOFS.filter(({ code }) => isFitted || code !== "fit-checked");

const proofsOf = ({ missing, fit }: HandoverResult) =>
  proofsWanted(fit !== undefined).map(({ code }) => ({ code, isShown: !missing.includes(code) }));

/** The record of a handover, with the day on which the combination is due to be changed. */
export function handoverRecord({ form, result, drawnBy, sources, doubts, ...facts }: RecordFacts): HandoverRecord {
  const { faults, duration_ms, isHandsOff, fit } = result;
  return {
    format: "gatefall-handover-record",
    version: 1,
    notice: NOTICE,
    ...form,
    ...facts,
    ...(drawnBy && { drawnBy }),
    proofs: proofsOf(result),
    faults: faults.length,
    undoneFaults: faults.filter(({ isUndone }) => isUndone).length,
    duration_ms,
    isHandsOff,
    ...(sources && { sources: [...sources] }),
    ...(doubts && { doubts: [...doubts] }),
    ...(fit && { fit: { faults: [...fit.faults], skipped: [...fit.skipped] } }),
    nextChangeDue: nextChangeDue(form.date),
    changeWhen: [...CHANGE_SENTENCES],
    changeSource: CHANGE_SOURCE,
  };
}

/**
 * Reads a record from outside.
 *
 * @param value - parsed JSON
 * @throws {RunError} naming the field that is wrong
 */
export function parseHandoverRecord(value: unknown): HandoverRecord {
  const parsed = recordSchema.safeParse(value);
  if (!parsed.success) throw new RunError(fieldProblem(parsed.error.issues, value), "record");
  return parsed.data;
}
