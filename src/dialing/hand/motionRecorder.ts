import type { Graduations, Milliseconds } from "../../lock/dial";
import type { AttemptStart } from "../attemptStart";
import type { TimedMotion } from "../motion";
import { keptPosition } from "./keptPosition";

/** Records what the hand does, so that a replay of it gives the same attempt. */
export class MotionRecorder {
  private readonly taken: TimedMotion & { readonly positions: Graduations[]; readonly times_ms: Milliseconds[] };
  /** Where the hand is, and where it is kept to be: on a step of the logbook's, so that a kept attempt replays exactly. */
  private hand: Graduations;
  private kept: Graduations;
  private began: Milliseconds | null = null;

  /** @param start - where the lock stands before the first move */
  constructor(start: AttemptStart) {
    this.taken = { start, positions: [], times_ms: [] };
    this.hand = start.dial;
    this.kept = start.dial;
  }

  /** The motion so far. An encoder lock's waiting time, kept on the steady clock, is told in the recording's times. */
  get recording(): TimedMotion {
    const { start } = this.taken;
    const until = start.memory?.waitsUntil_ms ?? null;
    if (start.memory === undefined || until === null || this.began === null) return this.taken;
    return { ...this.taken, start: { ...start, memory: { ...start.memory, waitsUntil_ms: until - this.began } } };
  }

  /**
   * Takes down one move of the hand.
   *
   * @param by - graduations; 0 for a rest
   * @param now - any steady clock, milliseconds
   * @returns the move as it is kept, for the lock: graduations
   */
  take(by: Graduations, now: Milliseconds): Graduations {
    this.began ??= now;
    this.hand += by;
    const before = this.kept;
    if (by !== 0) this.kept = keptPosition(this.hand);
    this.taken.positions.push(this.kept);
    this.taken.times_ms.push(now - this.began);
    return this.kept - before;
  }
}
