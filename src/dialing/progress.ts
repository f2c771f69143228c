import { type Graduations, signOf, type Turn } from "../lock/dial";
import { exact } from "../lock/exact";
import type { HandledLock } from "./attempt";
import { drawLength } from "./fault";
import type { HandReader } from "./handReader";
import { legArrivals } from "./leg";
import { distanceTo, runLength } from "./runs";

/** Where the hand is in the procedure, in numbers. */
export interface Progress {
  /** Index of the step: a number, or the procedure's length for the draw. */
  readonly step: number;
  /** Arrivals made at each number so far. */
  readonly arrivals: readonly number[];
  /** Turning left to do until the next arrival at the number, or until the stop; graduations, or null. */
  readonly toGo: Graduations | null;
}

/** What telling a progress needs of a lock and of the reading of its hand. */
export interface ReadHand extends Pick<HandledLock, "profile" | "combination" | "dial"> {
  readonly reader: Pick<HandReader, "legs" | "leg" | "targetOf">;
}

/** Arrivals made at every number, the leg under way included. */
function arrivalsMade(attempt: ReadHand): number[] {
  const { reader, profile } = attempt;
  return profile.procedure.map((_, k) => {
    const leg = reader.legs[k];
    const target = leg && reader.targetOf(leg);
    return leg === undefined || target === undefined ? 0 : legArrivals(leg, target);
  });
}

/** Turning left to do until the number next arrives. The mark that the leg started on does not count. */
function toNextArrival({ reader, profile, dial }: ReadHand, number: Graduations, turn: Turn): Graduations {
  const ahead = distanceTo(number, dial, turn, profile.graduations);
  const from = reader.leg?.from ?? dial;
  const isFirstMark = exact(signOf(turn) * (dial - from) + ahead) <= profile.stopTolerance;
  return isFirstMark ? exact(ahead + profile.graduations) : ahead;
}

/** Where the hand is in the procedure. */
export function progressOf(attempt: ReadHand): Progress {
  const { reader, profile, combination } = attempt;
  const step = Math.min(reader.leg?.step ?? 0, profile.procedure.length);
  const arrivals = arrivalsMade(attempt);
  const number = combination[step];
  const turn = profile.procedure[step]?.turn;
  if (number !== undefined && turn !== undefined) {
    return { step, arrivals, toGo: toNextArrival(attempt, number, turn) };
  }
  const stop = reader.legs.find((leg) => leg.step === step - 1)?.to;
  const drawn = reader.leg === undefined ? 0 : runLength(reader.leg);
  return { step, arrivals, toGo: stop === undefined ? null : Math.max(0, exact(drawLength(profile, stop) - drawn)) };
}
