import type { Combination } from "../lock/combination";
import type { Graduations } from "../lock/dial";
import { exact } from "../lock/exact";
import type { Profile } from "../lock/profile";
import type { HandReader } from "./handReader";
import { type Leg, legArrivals, type Target } from "./leg";
import { restLimit } from "./restWatch";
import { distanceTo, runLength, stopError } from "./runs";

/** What a hand can do wrong. */
export type FaultCode =
  | "wrong-way"
  | "too-few-turns"
  | "too-many-turns"
  | "stopped-short"
  | "ran-past"
  | "came-back"
  | "extra-turnback"
  | "not-drawn"
  | "paused-too-long";

/** One fault of an attempt, without words. */
export interface Fault {
  readonly code: FaultCode;
  /** The number it was made at, counted from 1; the last one for the draw. */
  readonly number: number;
  /** How large it is, graduations > 0: the way missed, overrun, turned back or missing; 0 for a pause. */
  readonly size: Graduations;
}

/** How an attempt is read at its end, or so far. */
export interface ReadHand {
  readonly profile: Profile;
  readonly combination: Combination;
  readonly reader: HandReader;
  readonly opened: boolean;
}

/**
 * How far the draw must turn from the last stop until the bolt is back.
 *
 * @param stop - unwrapped position of the last number's stop, graduations
 * @returns graduations, > 0
 */
export function drawLength(profile: Profile, stop: Graduations): Graduations {
  const { draw, graduations } = profile;
  const reach = profile.kind === "wheel-pack" ? distanceTo(draw.engageAt, stop, draw.turn, graduations) : 0;
  return exact(reach + draw.travel);
}

const turnFault = (leg: Leg, target: Target, error: Graduations): Fault | null => {
  const { step, perTurn, tolerance } = target;
  const number = leg.step + 1;
  // A stop just short of the last arrival loses that arrival: one cause, one fault.
  const isShort = error < -tolerance;
  const arrived = legArrivals(leg, target);
  const made = arrived + (isShort ? 1 : 0);
  if (made < step.arrivals) return { code: "too-few-turns", number, size: (step.arrivals - made) * perTurn };
  const extra = arrived - step.arrivals;
  return step.rule === "exactly" && extra > 0 ? { code: "too-many-turns", number, size: extra * perTurn } : null;
};

const stopFault = (leg: Leg, error: Graduations, tolerance: Graduations): Fault | null => {
  const number = leg.step + 1;
  if (error < -tolerance) return { code: "stopped-short", number, size: -error };
  return error > tolerance ? { code: leg.cameBack ? "came-back" : "ran-past", number, size: error } : null;
};

/**
 * The faults of one leg, read as if its last point were its stop.
 *
 * @param target - what its number asks for
 */
export function legFaults(leg: Leg, target: Target, restLimit_ms: number): Fault[] {
  const error = stopError(leg.turn, leg.to, target.number, target.perTurn);
  const number = leg.step + 1;
  const faults: Fault[] = [];
  for (const fault of [turnFault(leg, target, error), stopFault(leg, error, target.tolerance)]) {
    if (fault !== null) faults.push(fault);
  }
  for (const size of leg.turnbacks) faults.push({ code: "extra-turnback", number, size });
  if (leg.longestRest > restLimit_ms) faults.push({ code: "paused-too-long", number, size: 0 });
  return faults;
}

/**
 * A first turn made the wrong way: nothing else was turned yet, or a long one led into a first leg that is wrong.
 * Spinning off the other way before a sound first leg is no fault.
 */
const wrongWay = ({ reader }: ReadHand): Fault[] => {
  const [first] = reader.legs;
  const last = reader.runs.at(-1);
  if (first === undefined) {
    return last === undefined ? [] : [{ code: "wrong-way", number: 1, size: runLength(last) }];
  }
  if (reader.wrongWay <= 0) return [];
  const target = reader.targetOf(first);
  const isSound = target !== undefined && legFaults(first, target, Infinity).length === 0;
  return isSound ? [] : [{ code: "wrong-way", number: 1, size: reader.wrongWay }];
};

/** Numbers that no leg was made for, up to the first: the ones after it are not separate faults. */
const missing = ({ profile, reader }: ReadHand): Fault[] => {
  const { length } = reader.legs;
  const step = profile.procedure[length];
  return length === 0 || step === undefined
    ? []
    : [{ code: "too-few-turns", number: length + 1, size: step.arrivals * profile.graduations }];
};

const drawFaults = ({ profile, reader, opened }: ReadHand): Fault[] => {
  if (opened) return [];
  const count = profile.procedure.length;
  const last = reader.legs.find((leg) => leg.step === count - 1);
  const draw = reader.legs.find((leg) => leg.step === count);
  const wanted = last === undefined ? profile.draw.travel : drawLength(profile, last.to);
  const rest = draw !== undefined && draw.longestRest > restLimit(profile);
  const pause: Fault[] = rest ? [{ code: "paused-too-long", number: count, size: 0 }] : [];
  // Turning back in the draw moves no wheel, but an encoder takes it for another run.
  const back = profile.kind === "dial-encoder" ? (draw?.turnbacks ?? []) : [];
  const turnbacks = back.map((size): Fault => ({ code: "extra-turnback", number: count, size }));
  const turned = draw === undefined || draw.turn !== profile.draw.turn ? 0 : runLength(draw);
  const undone = turned < wanted ? [{ code: "not-drawn" as const, number: count, size: exact(wanted - turned) }] : [];
  return [...turnbacks, ...pause, ...undone];
};

/**
 * The faults of the legs that are behind the hand, in dialing order.
 *
 * A first turn the wrong way makes every later turn wrong: then it is the one fault told.
 */
export function faultsSoFar(read: ReadHand): Fault[] {
  const { reader } = read;
  const wrong = reader.legs.length === 1 ? [] : wrongWay(read);
  if (wrong.length > 0) return wrong;
  // While the hand may only be hesitating, the number it turned back from is not behind it.
  const isOpen = reader.isHesitating && reader.legs.at(-2)?.place === "before";
  return faultsOf(reader.legs.slice(0, isOpen ? -2 : -1), read);
}

const faultsOf = (legs: readonly Leg[], { reader }: ReadHand): Fault[] =>
  legs.flatMap((leg) => {
    const target = reader.targetOf(leg);
    return target === undefined ? [] : legFaults(leg, target, restLimit(reader.profile));
  });

/**
 * All faults of an attempt that has ended: its last point is read as a stop, and what was not done is missing.
 */
export function faultsAtEnd(read: ReadHand): Fault[] {
  const wrong = wrongWay(read);
  if (wrong.length > 0) return wrong;
  const made = faultsOf(read.reader.legs, read);
  // A lock that forgot what was dialed asks for nothing further.
  return made.some(({ code }) => code === "paused-too-long") ? made : [...made, ...missing(read), ...drawFaults(read)];
}
