import { type Graduations, type Turn, turnOf, wrap } from "../lock/dial";
import { driven } from "../lock/play";
import type { DialEncoderProfile, Range } from "../lock/profile";
import type { Chance } from "../statistics/chance";
import { drawNormal } from "../statistics/drawNormal";

/** What is hidden in a lock whose zero is to be set. All graduations. */
export interface ZeroCondition {
  /** How far the opening index stands off its true place, left positive. */
  readonly indexOffset: Graduations;
  /** Play between the dial and the cam, from 0 to 2. */
  readonly lostMotion: Graduations;
  /** Standard deviation of what the encoder adds to a reading of its own. */
  readonly noise: Graduations;
  /** Where the dial stands before the hand takes hold: a fraction of a graduation, so that no step lands exactly. */
  readonly start: Graduations;
}

/** Ranges that hidden conditions are drawn from. */
export interface ConditionRanges {
  readonly indexOffset: Range;
  readonly lostMotion: Range;
  readonly noise: Range;
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
  };
}

/**
 * A dial, its ring with the opening index, and the cam behind it that follows with lost motion.
 *
 * The cam follows by a play operator, as a wheel does: turning left it stands at the dial's position, turning right
 * it stays behind by the whole lost motion, that is, farther left. Mutable.
 */
export class ZeroLock {
  readonly condition: ZeroCondition;
  readonly perTurn: number;
  /** Unwrapped dial position, graduations. */
  dial: Graduations;
  /** How far the trainee has turned the ring, graduations, left positive. */
  ringTurn: Graduations = 0;
  /** Direction the cam last moved in, or null: all that a lock knows of the way its dial is turned. */
  camTurn: Turn | null = null;
  private cam: Graduations;

  constructor(condition: ZeroCondition, perTurn: number) {
    this.condition = condition;
    this.perTurn = perTurn;
    this.dial = condition.start;
    this.cam = condition.start;
  }

  /** The same lock in the same place, to try something on. */
  copy(): ZeroLock {
    const copy = new ZeroLock(this.condition, this.perTurn);
    copy.dial = this.dial;
    copy.cam = this.cam;
    copy.camTurn = this.camTurn;
    copy.ringTurn = this.ringTurn;
    return copy;
  }

  /** Turns the dial. @param by - graduations, left positive */
  turnBy(by: Graduations): void {
    this.dial += by;
    const before = this.cam;
    this.cam = driven(before, this.dial, { right: 0, left: this.condition.lostMotion });
    if (this.cam !== before) this.camTurn = turnOf(this.cam - before);
  }

  /** Unwrapped cam position, graduations. */
  get camPosition(): Graduations {
    return this.cam;
  }

  /** Takes back what a positive stop did not let through: dial and cam together. @param by - graduations */
  holdBack(by: Graduations): void {
    this.dial -= by;
    this.cam -= by;
  }

  /** How far the index as drawn stands off its true place, graduations, left positive. */
  get indexError(): Graduations {
    return this.condition.indexOffset + this.ringTurn;
  }

  /** What the index as drawn reads, unwrapped graduations. */
  get seen(): Graduations {
    return this.dial - this.indexError;
  }

  /** How far the zero mark is from the index as drawn, graduations; positive where the dial stands left of zero. */
  get seenDeviation(): Graduations {
    return wrap(this.seen, this.perTurn);
  }

  /**
   * How far the mark on the cam is from its own line, graduations; positive where the cam stands left of it.
   *
   * The cutaway shows it: it moves only once the play is taken up.
   */
  get camDeviation(): Graduations {
    return wrap(this.cam, this.perTurn);
  }

  /**
   * What the encoder reads at the cam, graduations off its own true zero.
   *
   * @param chance - source of the encoder's noise
   */
  readCam(chance: Chance): Graduations {
    return wrap(this.cam + drawNormal(chance, 0, this.condition.noise), this.perTurn);
  }

  /**
   * Where the cam stands when the index as drawn reads zero after a turn: what a perfect hand would teach the lock.
   *
   * @returns graduations, not wrapped
   */
  trueZero(turn: Turn): Graduations {
    return this.indexError + (turn === "right" ? this.condition.lostMotion : 0);
  }
}
