import type { Graduations, Milliseconds } from "../../lock/dial";
import { driven, lagging } from "../../lock/play";
import { RESTS_AFTER } from "./rest";

/** How a dial turns under the hand. */
export const DIAL_WEIGHTS = ["usual", "heavy", "light"] as const;

/** As it should, against much friction, or with so little that it runs on. */
export type DialWeight = (typeof DIAL_WEIGHTS)[number];

/**
 * How far the hand must wind up before a heavy dial that stands still lets go, graduations. Like every size here a
 * training value: common practice, no source.
 */
export const BREAKAWAY: Graduations = 0.8;
/** How far a heavy dial stays behind the hand while it slides: friction in motion is less than at rest. */
export const DRAG_LAG: Graduations = 0.5;

/** Time constant by which a light dial that runs on slows down. */
export const RUN_ON_TIME: Milliseconds = 100;
/** Time over which the speed that a hand gives to a light dial is taken. */
const SPEED_TIME: Milliseconds = 80;
/** A move after a longer pause begins from rest, and is no longer part of the sweep before. */
const NEW_SWEEP: Milliseconds = 60;
/** A single step, such as a key press, is taken to last this long. */
const STEP_TIME: Milliseconds = 200;
/** The fastest that a light dial runs on, graduations a second: it must not spin for turns. */
export const FASTEST_RUN_ON = 120;
/** What is left to run that nobody sees, graduations. */
const TOO_LITTLE: Graduations = 0.01;

/**
 * What lies between the hand and the dial: it turns moves of the hand into moves of the dial.
 *
 * Time is handed in, and never goes back. Mutable.
 */
export interface DialFeel {
  /** How far the hand is ahead of the dial, graduations, left positive. */
  readonly windUp: Graduations;
  /** Whether the dial moves by itself. */
  readonly isRunningOn: boolean;
  /**
   * The hand moves. `runOn` up to the same time comes first.
   *
   * @param by - graduations, left positive, one direction
   * @returns how far the dial goes with it, the same way: graduations
   */
  take(by: Graduations, now: Milliseconds): Graduations;
  /** Time passes. @returns how far the dial has run on since it was last asked, graduations */
  runOn(now: Milliseconds): Graduations;
  /** The dial was stopped from outside, by a positive stop or the end of an attempt. */
  halt(): void;
}

/** A dial that does what the hand does. */
class UsualFeel implements DialFeel {
  readonly windUp = 0;
  readonly isRunningOn = false;
  take(by: Graduations): Graduations {
    return by;
  }
  runOn(): Graduations {
    return 0;
  }
  halt(): void {}
}

/**
 * Dry (Coulomb) friction behind a springy grip. A dial at rest stays until the hand is ahead by the breakaway; then it
 * slips up to the smaller lag of sliding friction and follows at that. It sticks again where it rests or is turned back.
 */
class HeavyFeel implements DialFeel {
  windUp: Graduations = 0;
  readonly isRunningOn = false;
  /** -1 or 1 while it slides, 0 while it sticks. */
  private sliding = 0;
  private lastMoved: Milliseconds = Number.NEGATIVE_INFINITY;

  take(by: Graduations, now: Milliseconds): Graduations {
    this.windUp += by;
    if (now - this.lastMoved > RESTS_AFTER) this.sliding = 0;
    const way = Math.sign(this.windUp);
    const holds = this.sliding === way ? DRAG_LAG : BREAKAWAY;
    if (Math.abs(this.windUp) <= holds) return 0;
    const moved = driven(0, this.windUp, lagging(DRAG_LAG));
    this.windUp -= moved;
    this.sliding = way;
    this.lastMoved = now;
    return moved;
  }

  runOn(): Graduations {
    return 0;
  }

  halt(): void {
    this.sliding = 0;
  }
}

/**
 * A dial that goes on with the speed the hand gave it and loses it to friction in proportion, so that from a speed v
 * it comes to rest within v times `RUN_ON_TIME`. The next move of the same sweep catches it up before it pushes on.
 */
class LightFeel implements DialFeel {
  readonly windUp = 0;
  /** Graduations a millisecond that the hand has, and that the dial runs on with; left positive. */
  private handSpeed = 0;
  private speed = 0;
  /** How far the dial has run ahead of the hand in this sweep. */
  private ahead: Graduations = 0;
  private lastHand: Milliseconds = Number.NEGATIVE_INFINITY;
  private seen: Milliseconds = 0;

  get isRunningOn(): boolean {
    return this.speed !== 0;
  }

  take(by: Graduations, now: Milliseconds): Graduations {
    const pause = now - this.lastHand;
    const isSameSweep = pause <= NEW_SWEEP && by * this.handSpeed >= 0;
    if (!isSameSweep) {
      this.handSpeed = 0;
      this.ahead = 0;
    }
    const moved = this.pushedOn(by);
    this.handSpeed = speedAfter(this.handSpeed, by, Math.min(pause, STEP_TIME));
    const most = FASTEST_RUN_ON / 1000;
    this.speed = Math.max(-most, Math.min(most, this.handSpeed));
    this.lastHand = now;
    this.seen = now;
    return moved;
  }

  runOn(now: Milliseconds): Graduations {
    if (this.speed === 0 || now <= this.seen) return 0;
    const left = Math.exp(-(now - this.seen) / RUN_ON_TIME);
    const moved = this.speed * RUN_ON_TIME * (1 - left);
    this.seen = now;
    this.speed *= left;
    this.ahead += moved;
    if (Math.abs(this.speed) * RUN_ON_TIME < TOO_LITTLE) this.speed = 0;
    return moved;
  }

  halt(): void {
    this.speed = 0;
    this.handSpeed = 0;
    this.ahead = 0;
  }

  /** What of a move is left once the hand has caught the dial up. */
  private pushedOn(by: Graduations): Graduations {
    const caught = Math.min(Math.abs(this.ahead), Math.abs(by)) * Math.sign(by);
    this.ahead -= caught;
    return by - caught;
  }
}

/** The speed of a hand after a move: an average that forgets, never more than the fastest move in it. */
function speedAfter(before: number, by: Graduations, took_ms: Milliseconds): number {
  // Moves may come with one and the same time; the clock of a page goes in steps.
  const took = Math.max(1, took_ms);
  const kept = Math.exp(-took / SPEED_TIME);
  return before * kept + (by / took) * (1 - kept);
}

/** A feel for one dial, at rest. */
export function dialFeel(weight: DialWeight): DialFeel {
  switch (weight) {
    case "usual":
      return new UsualFeel();
    case "heavy":
      return new HeavyFeel();
    case "light":
      return new LightFeel();
  }
}
