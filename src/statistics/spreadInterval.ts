import quantile from "@stdlib/stats-base-dists-chisquare-quantile";
import { type Interval, USUAL_LEVEL, upperProbability } from "./interval";
import type { SampleSummary } from "./sample";
import { mustHold } from "./statisticsError";

/**
 * Interval that holds the standard deviation of the process behind a sample at a given level.
 *
 * Assumes independent values of a normal process: (n - 1) s^2 / sigma^2 is a chi-squared variable of n - 1 degrees of
 * freedom. Source: NIST/SEMATECH e-Handbook, 1.3.5.8, solved for sigma.
 *
 * @param sample - any unit, count >= 2
 * @param level - two-sided, in (0, 1)
 * @returns same unit; a single point 0 if the standard deviation is 0
 * @throws {StatisticsError} `too-few-values` for a count below 2, or `bad-level`
 */
export function spreadInterval(sample: SampleSummary, level = USUAL_LEVEL): Interval {
  const upper = upperProbability(level);
  const freedom = sample.count - 1;
  mustHold(freedom >= 1, "too-few-values", [], { least: 2 });
  const end = (probability: number) => sample.standardDeviation * Math.sqrt(freedom / quantile(probability, freedom));
  return { low: end(upper), high: end(1 - upper) };
}
