import { CENTERED, type Offset } from "../../fitting/offCenter";
import type { Combination } from "../../lock/combination";
import type { Graduations } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import type { Catching } from "../../lock/train/catching";
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
  /** What holds the dial once a turn; undefined where nothing does. */
  readonly catching: Catching | undefined;
  /** The middle of the ring off the axis of the spindle. */
  readonly ringOff: Offset;
  /** How far the ring is turned from where it belongs, graduations, left positive: what its marks show. */
  readonly ringTurned: Graduations;
  /** How far the dial can be pushed and pulled, millimeters. */
  readonly endPlay_mm: number;
  /** Whether the dial scrapes on its ring. */
  readonly scrapes: boolean;
  /** Where an encoder lock takes its zero to be, by side: cam angle, graduations. A wheel pack has no use for it. */
  readonly zero: LearnedZero;
}

/** End play of a dial in order, millimeters; a training value. */
const TRUE_PLAY_mm = 0.1;

/** A lock in order: as its card says, its zero set from both sides. */
export function soundMechanics({ profile, combination, lostMotion }: LockCard): Mechanics {
  return {
    profile,
    combination,
    indexOffset: 0,
    lostMotion,
    drag: 0,
    catching: undefined,
    ringOff: CENTERED,
    ringTurned: 0,
    endPlay_mm: TRUE_PLAY_mm,
    scrapes: false,
    // Turning right the cam stays behind by the lost motion: `ZeroLock.trueZero`.
    zero: { left: 0, right: lostMotion },
  };
}
