import type { Interval } from "./interval";
import { normalProbability } from "./normalDistribution";
import type { SampleSummary } from "./sample";
import { mustHold, mustLieIn } from "./statisticsError";
import { studentProbability } from "./studentDistribution";

/** What is known of a quantity: it is normal about `mean`. */
export interface NormalKnowledge {
  /** Any unit. */
  readonly mean: number;
  /** Same unit, >= 0. */
  readonly standardUncertainty: number;
}

/** Shown to conform, shown not to conform, or neither: more readings are wanted. */
export type ConformanceVerdict = "accept" | "reject" | "not shown yet";

/** Probability between two standardized limits of a distribution symmetric about 0. */
function probabilityBetween(low: number, high: number, below: (x: number) => number): number {
  // Above the center both are near 1 and their difference loses its digits: mirror it into the lower tail.
  return low > 0 ? below(-low) - below(-high) : below(high) - below(low);
}

function probabilityWithin(
  center: number,
  scale: number,
  limits: Interval,
  below: (standardized: number) => number,
): number {
  mustHold(limits.low <= limits.high, "bad-limits", [], limits);
  mustHold(scale >= 0 && Number.isFinite(scale) && Number.isFinite(center), "not-finite");
  if (scale === 0) return center >= limits.low && center <= limits.high ? 1 : 0;
  return probabilityBetween((limits.low - center) / scale, (limits.high - center) / scale, below);
}

/**
 * Probability that a quantity lies within its limits.
 *
 * Source: JCGM 106:2012, 7.3 (one-sided: the other limit is infinite) and 7.4 (two-sided).
 *
 * @param knowledge - any unit; an uncertainty of 0 gives 0 or 1
 * @param limits - same unit, both belong to the tolerance; a side may be infinite
 * @returns in [0, 1]
 * @throws {StatisticsError} `bad-limits` if low is above high, `not-finite` for impossible knowledge
 */
export function probabilityOfConformance(knowledge: NormalKnowledge, limits: Interval): number {
  return probabilityWithin(knowledge.mean, knowledge.standardUncertainty, limits, normalProbability);
}

/**
 * Probability that the mean of the process behind a sample lies within its limits.
 *
 * What is known of that mean is a t distribution of n - 1 degrees of freedom, moved to the sample mean and scaled by
 * s / sqrt(n). Source: JCGM 101:2008, 6.4.9.2; used as in JCGM 106:2012, clause 7.
 *
 * @param sample - any unit, count >= 2; a standard deviation of 0 gives 0 or 1
 * @param limits - same unit, both belong to the tolerance; a side may be infinite
 * @returns in [0, 1]
 * @throws {StatisticsError} `too-few-values` for a count below 2, `bad-limits`, or `not-finite`
 */
export function probabilityMeanConforms(sample: SampleSummary, limits: Interval): number {
  mustHold(sample.count >= 2, "too-few-values", [], { least: 2 });
  const scale = sample.standardDeviation / Math.sqrt(sample.count);
  return probabilityWithin(sample.mean, scale, limits, (t) => studentProbability(t, sample.count - 1));
}

/**
 * Verdict with a guard band on both sides of the limit.
 *
 * Source: JCGM 106:2012, 8.3, guarded acceptance and guarded rejection, in terms of the probability itself.
 *
 * @param probability - of conformance, in [0, 1]
 * @param risk - highest risk of a wrong verdict either way, in (0, 0.5)
 * @returns accept from 1 - risk upward, reject from risk downward, else not shown yet
 * @throws {StatisticsError} `bad-parameter` for a probability or risk out of range
 */
export function conformanceVerdict(probability: number, risk: number): ConformanceVerdict {
  mustLieIn("(0, 0.5)", "risk", risk, risk > 0 && risk < 0.5);
  mustLieIn("[0, 1]", "probability", probability, probability >= 0 && probability <= 1);
  if (probability >= 1 - risk) return "accept";
  return probability <= risk ? "reject" : "not shown yet";
}
