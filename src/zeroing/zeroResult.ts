import type { Graduations, Turn } from "../lock/dial";
import { type ConformanceVerdict, conformanceVerdict, probabilityMeanConforms } from "../statistics/conformance";
import type { Interval } from "../statistics/interval";
import { sampleSummary, spread } from "../statistics/sample";
import { studentInterval } from "../statistics/studentInterval";
import { welchInterval } from "../statistics/welchInterval";
import type { ZeroReading } from "./zeroingMachine";

/** What the readings from one side come to. All graduations but n and the probability. */
export interface SideResult {
  readonly n: number;
  readonly mean: Graduations;
  /** Standard deviation with n - 1. */
  readonly sd: Graduations;
  /** Largest minus smallest. */
  readonly spread: Graduations;
  /** 95 % interval of the mean, Student's t. */
  readonly ci95: Interval;
  /** Probability that the true mean lies within the tolerance. */
  readonly conformance: number;
  readonly verdict: ConformanceVerdict;
}

/** The lost motion as the readings show it, graduations. */
export interface LostMotionEstimate {
  /** Mean from the right minus mean from the left. */
  readonly estimate: Graduations;
  /** 95 % interval, Welch. */
  readonly ci95: Interval;
}

/** Tolerance and risk that a zero is held against. */
export interface ZeroLimits {
  /** Graduations, > 0; the true mean must lie within plus and minus this. */
  readonly tolerance: Graduations;
  /** Highest risk of a wrong verdict either way, in (0, 0.5). */
  readonly risk: number;
}

/** What the readings from both sides come to. */
export interface ZeroResult extends Readonly<Record<Turn, SideResult>> {
  readonly lostMotion: LostMotionEstimate;
}

/**
 * What the readings from one side come to.
 *
 * Sources: JCGM 100:2008, 4.2; Student (1908); JCGM 106:2012, clause 7 and 8.3, with the t distribution of n - 1 degrees
 * of freedom about the mean, scaled by s / sqrt(n).
 *
 * @param deviations - graduations, at least two
 * @throws {StatisticsError} `empty-sample`, `too-few-values`, `not-finite`, `bad-limits`, `bad-parameter`
 */
export function sideResult(deviations: readonly Graduations[], { tolerance, risk }: ZeroLimits): SideResult {
  const sample = sampleSummary(deviations);
  const conformance = probabilityMeanConforms(sample, { low: -tolerance, high: tolerance });
  return {
    n: sample.count,
    mean: sample.mean,
    sd: sample.standardDeviation,
    spread: spread(deviations),
    ci95: studentInterval(sample),
    conformance,
    verdict: conformanceVerdict(conformance, risk),
  };
}

/**
 * Lost motion from readings of both sides: mean from the right minus mean from the left, with Welch's interval.
 *
 * @param sides - graduations, at least two a side
 * @throws {StatisticsError} `too-few-values`, `empty-sample`, `not-finite`
 */
export function lostMotionEstimate(sides: Readonly<Record<Turn, readonly Graduations[]>>): LostMotionEstimate {
  const { difference, low, high } = welchInterval(sampleSummary(sides.right), sampleSummary(sides.left));
  return { estimate: difference, ci95: { low, high } };
}

/**
 * What readings from both sides come to.
 *
 * @param sides - graduations, at least two a side
 * @throws {StatisticsError} as `sideResult`
 */
export function zeroResult(sides: Readonly<Record<Turn, readonly Graduations[]>>, limits: ZeroLimits): ZeroResult {
  return {
    right: sideResult(sides.right, limits),
    left: sideResult(sides.left, limits),
    lostMotion: lostMotionEstimate(sides),
  };
}

/**
 * What an exercise comes to: the hand is judged at the index as drawn, the lost motion is seen at the cam.
 *
 * The mark is brought to the same index from both sides, so the index shows the hand alone; the cam shows hand and play.
 * What the hand missed is known, reading by reading, so it is taken off before the lost motion is estimated: what is left
 * spreads by the encoder's noise alone.
 *
 * @param accepted - at least two a side
 * @throws {StatisticsError} as `sideResult`
 */
export function exerciseResult(
  accepted: Readonly<Record<Turn, readonly ZeroReading[]>>,
  limits: ZeroLimits,
): ZeroResult {
  const sides = (of: (reading: ZeroReading) => Graduations) => ({
    right: accepted.right.map(of),
    left: accepted.left.map(of),
  });
  return {
    ...zeroResult(
      sides(({ deviation }) => deviation),
      limits,
    ),
    lostMotion: lostMotionEstimate(sides(({ cam, deviation }) => cam - deviation)),
  };
}
