import type { Graduations } from "../lock/dial";
import type { DialEncoderProfile, Range } from "../lock/profile";
import type { Chance } from "../statistics/chance";
import { type Interval, USUAL_LEVEL } from "../statistics/interval";
import { sampleSummary } from "../statistics/sample";
import { studentInterval } from "../statistics/studentInterval";

/** How far a ring creeps while its screws are tightened, graduations, left positive; a training value. */
export const USUAL_CREEP: Range = [-0.2, 0.2];

/** How far the slots of the ring let it turn either way from where it was delivered, graduations; a training value. */
export const RING_TRAVEL: Graduations = 5;

/** The creep of a lock's ring: the usual one, or what its profile states. */
export function profileCreep({ zeroing }: DialEncoderProfile): Range {
  return zeroing?.ringCreep ?? USUAL_CREEP;
}

/**
 * Turns a loose ring, as far as its slots allow.
 *
 * @param ringTurn - how far it has been turned so far, graduations, left positive
 * @param by - graduations, left positive
 * @returns how far it has been turned then, within plus and minus `RING_TRAVEL`
 */
export function turnRing(ringTurn: Graduations, by: Graduations): Graduations {
  return Math.min(RING_TRAVEL, Math.max(-RING_TRAVEL, ringTurn + by));
}

/**
 * Clamps the ring: the screws draw it along by a little, however still it was held.
 *
 * So clamping is looked at afterwards, and done again where the index no longer stands true.
 *
 * @param ringTurn - how far it has been turned, graduations, left positive
 * @param creep - range the creep is drawn from, uniformly
 * @returns how far it has been turned once clamped
 */
export function clampRing(ringTurn: Graduations, chance: Chance, creep: Range = USUAL_CREEP): Graduations {
  const [low, high] = creep;
  return turnRing(ringTurn, low + chance() * (high - low));
}

/** How far the index stands off its true place as the readings show it, graduations, left positive. */
export interface IndexErrorEstimate {
  readonly estimate: Graduations;
  /** 95 % interval, Student's t. */
  readonly ci95: Interval;
}

/**
 * The error of the index, seen in the readings: turning left the cam stands where the dial does, so a hand that brings
 * the mark to an index off by some angle leaves the cam off by the same.
 *
 * The zero takes it in: a lock that has learned with its ring askew opens all the same. But a ring that is straightened
 * afterwards makes every stop wrong by as much.
 *
 * @param cams - what the encoder read in the series turning left, less what the hand missed at the index, graduations,
 *   at least two
 * @throws {StatisticsError} `empty-sample`, `too-few-values`, `not-finite`
 */
export function indexErrorEstimate(cams: readonly Graduations[]): IndexErrorEstimate {
  const sample = sampleSummary(cams);
  return { estimate: sample.mean, ci95: studentInterval(sample, USUAL_LEVEL) };
}
