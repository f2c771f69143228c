import type { TryResult } from "../../../drill/marking/tryResult";
import type { Milliseconds } from "../../../lock/dial";
import { recordHash } from "../../../records/hashedRecord";
import { motionText } from "../../../records/motion/traceCodec";
import { type SittingFacts, sittingRecord } from "../../../records/sitting/sittingRecord";
import { APP_VERSION } from "../../parts/page/appVersion";
import type { KeptRecord } from "../../verdicts/keptRecord";
import { type RunningSitting, runningOf } from "./sittingKeeping";
import type { SittingSession } from "./sittingSession";

/** Fetched when first needed: the logbook comes with it. */
const fetchKeep = () => import("../../keeping/keep");

/** No screen waits longer than this for the logbook, milliseconds. */
const LOGBOOK_WAIT: Milliseconds = 1500;

/** Where a text says that a sitting goes on, the logbook is asked for longer: it may have the end of it, milliseconds. */
const LOGBOOK_WAIT_FOR_END: Milliseconds = 15_000;

/** What the logbook answers; something else where it does not open, or not in time. */
async function answerInTime<Answer>(
  ask: () => Promise<Answer>,
  otherwise: Answer,
  wait: Milliseconds = LOGBOOK_WAIT,
): Promise<Answer> {
  const tooLate = new Promise<Answer>((resolve) => setTimeout(() => resolve(otherwise), wait));
  return Promise.race([ask().catch(() => otherwise), tooLate]);
}

/** Motions that this page does not have, from the logbook: the try was made in a page before, or in another browser tab. */
async function withMotions(id: string, facts: SittingFacts): Promise<SittingFacts> {
  const { tries, motions = [] } = facts;
  const isWanted = (one: TryResult, index: number) =>
    one.kind === "dialing" && !one.isBrokenOff && (motions[index] ?? null) === null;
  if (!tries.some(isWanted)) return facts;
  const stored = await answerInTime(async () => (await fetchKeep()).motionsOfSitting(id, tries.length), []);
  const found = tries.map((one, index) => {
    const motion = isWanted(one, index) ? (stored[index] ?? null) : null;
    return motion === null ? (motions[index] ?? null) : motionText(motion);
  });
  return { ...facts, motions: found };
}

/** The record of a sitting that is over. */
export async function recordOf(session: SittingSession): Promise<KeptRecord> {
  const record = sittingRecord(await withMotions(session.id, session.facts(APP_VERSION)));
  return { id: session.id, record, sha256: recordHash(record) };
}

/** Who practices, or null where the logbook does not say in time. */
export const practicing = () => answerInTime(async () => (await fetchKeep()).whoPractices(), null);

/** What the logbook knows of sittings when a page begins. */
interface SittingsKnown {
  readonly running: readonly RunningSitting[];
  /** Whether the sitting asked for has ended there. */
  readonly hasEnded: boolean;
}

/** Asks the logbook which sittings run, and whether one has ended. @param id - of the one that a text is of, or null */
export async function sittingsKnown(id: string | null): Promise<SittingsKnown> {
  const ask = async () => {
    const { sittingsNow, hasEnded } = await fetchKeep();
    return { running: runningOf(await sittingsNow()), hasEnded: id !== null && (await hasEnded(id)) };
  };
  return answerInTime(ask, { running: [], hasEnded: false }, id === null ? LOGBOOK_WAIT : LOGBOOK_WAIT_FOR_END);
}
