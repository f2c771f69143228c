import type { Combination } from "../../lock/combination";
import type { Graduations } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import type { LearnedZero } from "../../lock/train/learnedZero";
import type { LockCard } from "./trouble";

/** What a lock on the bench is really made of. A condition changes one of these and nothing else. */
export interface Mechanics {
  /** The lock behind the dial: tolerances of its gates, its pause. */
  readonly profile: Profile;
  /** The numbers that the wheels carry, or the encoder knows. */
  readonly combination: Combination;
  /** How far the opening index stands off its true place, graduations, left positive. */
  readonly indexOffset: Graduations;
  /** Play between dial and cam, graduations. */
  readonly lostMotion: Graduations;
  /** How far the hand must be ahead before the dial moves, graduations. */
  readonly drag: Graduations;
  /** Where an encoder lock takes its zero to be, by side: cam angle, graduations. A wheel pack has no use for it. */
  readonly zero: LearnedZero;
}

/** A lock in order: as its card says, its zero set from both sides. */
export function soundMechanics({ profile, combination, lostMotion }: LockCard): Mechanics {
  return {
    profile,
    combination,
    indexOffset: 0,
    lostMotion,
    drag: 0,
    // Turning right the cam stays behind by the lost motion: `ZeroLock.trueZero`.
    zero: { left: 0, right: lostMotion },
  };
}
