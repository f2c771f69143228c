import { type Graduations, type Turn, wrap } from "../lock/dial";
import type { DialEncoderProfile, Range } from "../lock/profile";
import { HeavyDrawTrain } from "../lock/train/heavyDraw";
import type { TrainSpec } from "../lock/train/lockTrain";
import type { Chance } from "../statistics/chance";
import { drawNormal } from "../statistics/drawNormal";

/** What is hidden in a lock whose zero is to be set. It starts on a fraction of a graduation, so that no step lands exactly. */
export interface ZeroCondition extends TrainSpec {
  /** Standard deviation of what the encoder adds to a reading of its own, graduations. */
  readonly noise: Graduations;
}

/** Ranges that hidden conditions are drawn from. */
export interface ConditionRanges {
  readonly indexOffset: Range;
  readonly lostMotion: Range;
  readonly noise: Range;
  /** Joints that are known and not drawn: those of a lock that was fitted before. */
  readonly fitted?: Omit<TrainSpec, "start"> | undefined;
}

/** Ranges of a training lock in fair order; training values. */
export const USUAL_RANGES: ConditionRanges = { indexOffset: [-1.5, 1.5], lostMotion: [0.2, 1.6], noise: [0, 0.05] };

/** The ranges of a lock: the usual ones, and over them what its profile states. */
export function profileRanges({ zeroing }: DialEncoderProfile): ConditionRanges {
  return {
    indexOffset: zeroing?.indexOffset ?? USUAL_RANGES.indexOffset,
    lostMotion: zeroing?.lostMotion ?? USUAL_RANGES.lostMotion,
    noise: zeroing?.noise ?? USUAL_RANGES.noise,
  };
}

/**
 * A condition drawn uniformly within ranges.
 *
 * @param perTurn - graduations in one turn
 */
export function drawCondition(ranges: ConditionRanges, perTurn: number, chance: Chance): ZeroCondition {
  const within = ([low, high]: Range) => low + chance() * (high - low);
  return {
    indexOffset: within(ranges.indexOffset),
    lostMotion: within(ranges.lostMotion),
    noise: within(ranges.noise),
    start: chance() * perTurn,
    ...ranges.fitted,
  };
}

/** What a lock is drawn by. */
interface DrawnLock {
  readonly ranges: ConditionRanges;
  readonly graduations: number;
}

/** A lock train whose zero is to be set, with the encoder that reads its cam. Mutable. */
export class ZeroLock extends HeavyDrawTrain {
  readonly condition: ZeroCondition;

  constructor(condition: ZeroCondition, perTurn: number) {
    super(condition, perTurn);
    this.condition = condition;
  }

  /** A lock with a condition drawn within ranges. @param graduations - in one turn */
  static drawn({ ranges, graduations }: DrawnLock, chance: Chance): ZeroLock {
    return new ZeroLock(drawCondition(ranges, graduations, chance), graduations);
  }

  /**
   * What the encoder reads at the cam, graduations off its own true zero.
   *
   * @param chance - source of the encoder's noise
   */
  readCam(chance: Chance): Graduations {
    return wrap(this.camPosition + drawNormal(chance, 0, this.condition.noise), this.perTurn);
  }

  /**
   * Where the cam stands when the index as drawn reads zero after a turn: what a perfect hand would teach the lock.
   *
   * @returns graduations, not wrapped
   */
  trueZero(turn: Turn): Graduations {
    // Where the dial's own error goes round with it, the error at zero itself: no farther off than the errors are small.
    const { keyedOff = 0, lostMotion } = this.condition;
    return this.indexErrorAt(this.indexErrorAt(0)) + keyedOff + (turn === "right" ? lostMotion : 0);
  }
}
