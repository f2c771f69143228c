import type { Graduations, Milliseconds } from "../lock/dial";
import type { AttemptStart } from "./attemptStart";

/** A motion of the hand, and where the lock stood before it. */
export interface Motion {
  /** Kept to the last bit: what a lock does hangs on it. */
  readonly start?: AttemptStart | undefined;
  /** Where the hand was: unwrapped graduations, left positive. */
  readonly positions: readonly Graduations[];
  /** A time for each position, never falling. */
  readonly times_ms?: readonly Milliseconds[] | undefined;
}

/** A motion that was recorded whole: with its start, and its times from 0 at the first move. */
export interface TimedMotion extends Motion {
  readonly start: AttemptStart;
  readonly times_ms: readonly Milliseconds[];
}
