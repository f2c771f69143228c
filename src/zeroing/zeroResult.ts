import type { Graduations, Turn } from "../lock/dial";
import { type ConformanceVerdict, conformanceVerdict } from "../statistics/conformance";
import type { Interval } from "../statistics/interval";
import { coarseDifference, coarseInterval, coarseMean, probabilityCoarseMeanConforms } from "../statistics/resolution";
import { sampleSummary, spread } from "../statistics/sample";
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
  /** Whether nothing is shown because of the resolution alone: readings in such steps never could show it. */
  readonly isTooCoarse: boolean;
}

/** The lost motion as the readings show it, graduations. */
export interface LostMotionEstimate {
  /** Mean turning right minus mean turning left. */
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
  /** Step in which the readings were taken, graduations; 0 where left out, for readings without steps. */
  readonly resolution?: Graduations | undefined;
}

/** What the readings from both sides come to. */
export interface ZeroResult extends Readonly<Record<Turn, SideResult>> {
  readonly lostMotion: LostMotionEstimate;
}

/**
 * What the readings from one side come to.
 *
 * Sources: JCGM 100:2008, 4.2; Student (1908); JCGM 106:2012, clause 7 and 8.3, with the t distribution of n - 1 degrees
 * of freedom about the mean, scaled by s / sqrt(n); the readings' resolution adds to it (JCGM 100:2008, F.2.2).
 *
 * @param deviations - graduations, at least two
 * @throws {StatisticsError} `empty-sample`, `too-few-values`, `not-finite`, `bad-limits`, `bad-parameter`
 */
export function sideResult(
  deviations: readonly Graduations[],
  { tolerance, risk, resolution = 0 }: ZeroLimits,
): SideResult {
  const sample = sampleSummary(deviations);
  const limits = { low: -tolerance, high: tolerance };
  const known = coarseMean(sample, resolution);
  const conformance = probabilityCoarseMeanConforms(known, limits);
  const atBest = probabilityCoarseMeanConforms(coarseMean({ ...sample, standardDeviation: 0 }, resolution), limits);
  const isShown = conformanceVerdict(conformance, risk) !== "not shown yet";
  return {
    n: sample.count,
    mean: sample.mean,
    sd: sample.standardDeviation,
    spread: spread(deviations),
    ci95: coarseInterval(known),
    conformance,
    verdict: conformanceVerdict(conformance, risk),
    isTooCoarse: resolution > 0 && !isShown && conformanceVerdict(atBest, risk) === "not shown yet",
  };
}

/**
 * Lost motion from readings of both sides: mean turning right minus mean turning left, with Welch's interval.
 *
 * @param sides - graduations, at least two a side
 * @param resolution - step of the readings, graduations; both means carry its uncertainty
 * @throws {StatisticsError} `too-few-values`, `empty-sample`, `not-finite`
 */
export function lostMotionEstimate(
  sides: Readonly<Record<Turn, readonly Graduations[]>>,
  resolution: Graduations = 0,
): LostMotionEstimate {
  const [right, left] = [sampleSummary(sides.right), sampleSummary(sides.left)];
  if (resolution === 0) {
    const { difference, low, high } = welchInterval(right, left);
    return { estimate: difference, ci95: { low, high } };
  }
  const known = coarseDifference(coarseMean(right, resolution), coarseMean(left, resolution));
  return { estimate: known.mean, ci95: coarseInterval(known) };
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
    lostMotion: lostMotionEstimate(sides, limits.resolution),
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
