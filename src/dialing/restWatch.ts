import { type Graduations, type Milliseconds, signOf } from "../lock/dial";
import { exact } from "../lock/exact";
import type { Profile } from "../lock/profile";
import type { HandReader } from "./handReader";
import { type Leg, legArrivals, type Target } from "./leg";
import { stopError } from "./runs";

/** Rest on a number after running past it that counts as having come back to it, milliseconds. */
const CAME_BACK_REST: Milliseconds = 300;
/** Drift within which the hand counts as resting, graduations. */
export const REST_DRIFT: Graduations = 0.25;

/** Longest rest that a lock takes, milliseconds; infinite where it takes any. */
export function restLimit(profile: Profile): Milliseconds {
  return profile.kind === "dial-encoder" && profile.pauseLimit_s !== undefined ? profile.pauseLimit_s * 1000 : Infinity;
}

/** The legs of an attempt, as a watch looks at them. */
type ReadLegs = Pick<HandReader, "leg" | "legs" | "targetOf">;

/** Watches how long a hand rests, and where. Mutable. */
export class RestWatch {
  private readonly limit_ms: Milliseconds;
  private anchor: Graduations;
  private since: Milliseconds | undefined;
  /** How long the hand rested where it rests, when that was last looked at, milliseconds. */
  private rested: Milliseconds = 0;
  private backSince: Milliseconds | undefined;

  /** @param position - where the dial stands, graduations */
  constructor(profile: Profile, position: Graduations) {
    this.limit_ms = restLimit(profile);
    this.anchor = position;
  }

  /** An attempt begins here: a rest before its first motion is nobody's pause. */
  begin(position: Graduations, now_ms: Milliseconds | undefined): void {
    this.anchor = position;
    this.since = now_ms;
  }

  /** The hand has turned about. */
  turnAbout(): void {
    this.backSince = undefined;
  }

  /** Whether this very event makes the rest in a leg longer than the lock waits; notes the longest rest in the leg. */
  isTooLong(leg: Leg | undefined, position: Graduations, now_ms: Milliseconds): boolean {
    if (this.since === undefined || Math.abs(exact(position - this.anchor)) > REST_DRIFT) {
      this.anchor = position;
      this.since = now_ms;
      this.rested = 0;
    }
    if (leg === undefined) return false;
    const { rested: before, limit_ms } = this;
    this.rested = now_ms - this.since;
    leg.longestRest = Math.max(leg.longestRest, this.rested);
    return before <= limit_ms && this.rested > limit_ms;
  }

  /** Notes a hand that ran past its number, came back and rests on it. */
  noteReturn(reader: ReadLegs, position: Graduations, now_ms: Milliseconds): void {
    const leg = legBackOnNumber(reader, position);
    if (leg === undefined) {
      this.backSince = undefined;
      return;
    }
    this.backSince ??= now_ms;
    if (now_ms - this.backSince >= CAME_BACK_REST) leg.cameBack = true;
  }
}

/** The leg under way, or the one before it, where the dial is back on the number that it ran past. */
function legBackOnNumber(reader: ReadLegs, position: Graduations): Leg | undefined {
  const { leg } = reader;
  if (leg === undefined || isBackOnNumber(leg, reader.targetOf(leg), position)) return leg;
  const before = reader.legs.at(-2);
  return before !== undefined && isBackOnNumber(before, reader.targetOf(before), position) ? before : undefined;
}

/** Whether a leg ran past its number and the dial is back on the mark it ran past. */
function isBackOnNumber(leg: Leg, target: Target | undefined, position: Graduations): boolean {
  if (target === undefined || !mayBeBack(leg, target, position)) return false;
  const past = stopError(leg.turn, leg.to, target.number, target.perTurn);
  const mark = exact(leg.to - signOf(leg.turn) * past);
  return Math.abs(exact(position - mark)) <= target.tolerance && legArrivals(leg, target) > 0;
}

/** Whether a leg ran past its number and the dial is near enough to be back there, or to come back there if it goes on. */
export function mayBeBack(leg: Leg, target: Target, position: Graduations): boolean {
  // It ran past by half a turn at most, so from here the mark is out of reach. Asked at every move: the quick look first.
  const back = Math.abs(exact(leg.to - position));
  if (back === 0 || back > target.perTurn / 2 + target.tolerance) return false;
  return stopError(leg.turn, leg.to, target.number, target.perTurn) > target.tolerance;
}
