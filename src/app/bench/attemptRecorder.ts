import type { AttemptStart } from "../../dialing/attempt";
import type { Graduations, Milliseconds } from "../../lock/dial";

/** A motion as it is kept: hand positions and their times, from 0 at the first. */
export interface Recording {
  readonly start: AttemptStart;
  readonly positions: Graduations[];
  readonly times_ms: Milliseconds[];
}

/** Records what the hand does, so that a replay of it gives the same attempt. */
export class AttemptRecorder {
  private readonly taken: Recording;
  private hand: Graduations;
  private began: Milliseconds | null = null;

  /** @param start - where the lock stands before the first move */
  constructor(start: AttemptStart) {
    this.taken = { start, positions: [], times_ms: [] };
    this.hand = start.dial;
  }

  /** The motion so far. An encoder lock's waiting time, kept on the steady clock, is told in the recording's times. */
  get recording(): Recording {
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
   */
  take(by: Graduations, now: Milliseconds): void {
    this.began ??= now;
    this.hand += by;
    this.taken.positions.push(this.hand);
    this.taken.times_ms.push(now - this.began);
  }
}
