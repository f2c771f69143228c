import type { Graduations } from "../lock/dial";
import { exact } from "../lock/exact";
import type { Profile } from "../lock/profile";
import type { DialingFact, Place } from "./dialingFact";
import type { HandReader } from "./handReader";
import { HESITATION, type Leg, newLeg, placeOf, type Target } from "./leg";
import type { Run } from "./runs";

/*
 * A long run in the first direction under a later number of an encoder lock is two things at once: going round again at
 * that number, and perhaps a new first number. It is read as the first of them until the turn after the last number is
 * too long for a draw; only then the attempt is read anew, from that run on.
 */

/** Turning after the last number beyond which no hand is drawing the bolt any more, graduations. */
export function drawTooLong({ draw, graduations }: Profile): Graduations {
  return exact(draw.travel + graduations * HESITATION);
}

/** Whether the attempt began with the run under way. */
export const isFirstRun = ({ legs, runs }: Pick<HandReader, "legs" | "runs">): boolean =>
  legs.length === 1 && legs[0]?.firstRun === runs.length - 1;

/**
 * The legs of an attempt read as begun with a later run.
 *
 * @param legs - as they were read so far
 * @param index - of the run that is now the first, among the runs of the trace
 * @param targets - what each number asks for, in dialing order
 */
export function readFrom(legs: readonly Leg[], runs: readonly Run[], index: number, targets: readonly Target[]): Leg[] {
  const first = runs[index];
  if (first === undefined) return [...legs];
  const around = legs.find((leg) => leg.firstRun <= index && index <= leg.lastRun);
  const begun =
    around === undefined ? { ...newLeg(0, first, index, undefined), to: first.to } : cut(around, first, index);
  const later = legs.filter((leg) => leg.firstRun > index);
  return [begun, ...later].map((leg, step) => placed({ ...leg, step }, targets[step]));
}

/**
 * The attempt under way, read as if it had begun with the latest turn in the first direction; null where it did.
 * What a hand means that starts over after a mistake.
 */
export function startedOver(reader: HandReader): Pick<HandReader, "legs" | "leg" | "targetOf"> | null {
  const { leg, runs, targets, restart } = reader;
  const first = reader.profile.procedure[0]?.turn;
  const isAgain = leg !== undefined && leg.step > 0 && leg.step < targets.length && leg.turn === first;
  const index = restart ?? (isAgain ? leg.lastRun : null);
  if (index === null) return null;
  const legs = readFrom(reader.legs, runs, index, targets);
  return { legs, leg: legs.at(-1), targetOf: (one) => targets[one.step] };
}

/** A leg from one of its runs on. */
function cut(leg: Leg, { from }: Run, index: number): Leg {
  // Every second run after it is a turnback.
  const turnbacks = Math.floor((leg.lastRun - index) / 2);
  return { ...leg, from, firstRun: index, turnbacks: turnbacks === 0 ? [] : leg.turnbacks.slice(-turnbacks) };
}

const placed = (leg: Leg, target: Target | undefined): Leg => ({
  ...leg,
  isJudged: false,
  place: target === undefined ? "before" : placeOf(leg, target),
});

/** What happened, as a chart hears it, when an attempt is read anew. */
export function restartFacts(legs: readonly Leg[]): DialingFact[] {
  return legs.flatMap((leg, k): DialingFact[] => [
    k === 0 ? { type: "fresh.started" } : { type: "turn.reversed" },
    ...placeFacts("before", leg.place),
  ]);
}

const REACHED: DialingFact = { type: "number.reached" };
const PASSED: DialingFact = { type: "number.passed" };

const PLACE_FACTS: Readonly<Record<Place, Readonly<Record<Place, readonly DialingFact[]>>>> = {
  before: { before: [], at: [REACHED], past: [REACHED, PASSED] },
  at: { before: [], at: [], past: [PASSED] },
  past: { before: [], at: [REACHED], past: [] },
};

/** What happened when the dial went from one place to another with respect to its number. */
export function placeFacts(before: Place, after: Place): readonly DialingFact[] {
  return PLACE_FACTS[before][after];
}
