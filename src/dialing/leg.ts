import type { Combination } from "../lock/combination";
import type { Graduations, Milliseconds, Turn } from "../lock/dial";
import type { Profile, Step } from "../lock/profile";
import type { Place } from "./dialingFact";
import { arrivals, type Run, runLength, stopError } from "./runs";

/** The part of an attempt that belongs to one number, or to the draw: a run, or several with short turnbacks between. */
export interface Leg {
  /** Index of its step in the procedure; the procedure's length stands for the draw, more for what follows it. */
  readonly step: number;
  readonly turn: Turn;
  readonly from: Graduations;
  /** Furthest point along its turn: the stop, once the hand has turned about. */
  to: Graduations;
  /** Indices of its first and last run among the runs of the trace. */
  readonly firstRun: number;
  lastRun: number;
  place: Place;
  /** Lengths of its turnbacks, graduations. */
  readonly turnbacks: Graduations[];
  /** Whether it is a draw that the lock has answered. */
  isJudged: boolean;
  /** Whether the hand, having run past, came back and rested on the number. */
  cameBack: boolean;
  /** Longest rest within it, milliseconds; 0 where the motion has no times. */
  longestRest: Milliseconds;
  readonly startedAt: Milliseconds | undefined;
  endedAt: Milliseconds | undefined;
}

/**
 * A leg that begins with a run.
 *
 * @param index - of the run among the runs of the trace
 */
export function newLeg(step: number, run: Run, index: number, startedAt: Milliseconds | undefined): Leg {
  return {
    step,
    turn: run.turn,
    from: run.from,
    to: run.from,
    firstRun: index,
    lastRun: index,
    place: "before",
    turnbacks: [],
    isJudged: false,
    cameBack: false,
    longestRest: 0,
    startedAt,
    endedAt: undefined,
  };
}

/** A turnback shorter than this part of a turn, with no arrival in it, is a hesitation and not a step of its own. */
export const HESITATION = 1 / 4;

/** What a leg's number asks for. */
export interface Target {
  readonly step: Step;
  /** Reading, graduations. */
  readonly number: Graduations;
  readonly perTurn: number;
  readonly tolerance: Graduations;
}

/** What each number of a combination asks for, in dialing order. */
export const targetsOf = (profile: Profile, combination: Combination): Target[] =>
  profile.procedure.map((step, k) => ({
    step,
    number: combination[k] ?? 0,
    perTurn: profile.graduations,
    tolerance: profile.stopTolerance,
  }));

/** How often the leg's number has come to the index so far, the stop included. */
export function legArrivals(run: Run, { number, perTurn, tolerance }: Target): number {
  return arrivals(run, number, perTurn, tolerance);
}

/** Where a leg has got to with respect to its number. */
export function placeOf(leg: Run, target: Target): Place {
  const { arrivals: wanted, rule } = target.step;
  // Between its first arrival and its last a number goes round once for each; shorter legs need no counting.
  if (runLength(leg) <= (wanted - 1) * target.perTurn) return "before";
  const made = legArrivals(leg, target);
  if (made < wanted) return "before";
  const isOnNumber = Math.abs(stopError(leg.turn, leg.to, target.number, target.perTurn)) <= target.tolerance;
  const isOnTime = rule === "at-least" || made === wanted;
  return isOnNumber && isOnTime ? "at" : "past";
}

/**
 * Whether a leg that the hand now turns back from was only a hesitation in the leg before it.
 *
 * @param target - what its number asks for, or undefined for the draw
 */
export function isHesitation(leg: Leg, target: Target | undefined, perTurn: number): boolean {
  const isShort = leg.firstRun === leg.lastRun && runLength(leg) < perTurn * HESITATION;
  return isShort && (target === undefined || legArrivals(leg, target) === 0);
}
