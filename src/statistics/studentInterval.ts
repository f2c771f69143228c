import { type Interval, USUAL_LEVEL, upperProbability } from "./interval";
import type { SampleSummary } from "./sample";
import { mustHold } from "./statisticsError";
import { studentQuantile } from "./studentDistribution";

/**
 * Interval that holds the mean of the process behind a sample at a given level.
 *
 * Assumes independent values of a normal process. Source: Student (1908), Biometrika 6:1-25; NIST/SEMATECH e-Handbook,
 * 1.3.5.2.
 *
 * @param sample - any unit, count >= 2
 * @param level - two-sided, in (0, 1)
 * @returns same unit, centered on the mean; a single point if the standard deviation is 0
 * @throws {StatisticsError} `too-few-values` for a count below 2, or `bad-level`
 */
export function studentInterval(sample: SampleSummary, level = USUAL_LEVEL): Interval {
  const upper = upperProbability(level);
  mustHold(sample.count >= 2, "too-few-values", [], { least: 2 });
  const reach = (studentQuantile(upper, sample.count - 1) * sample.standardDeviation) / Math.sqrt(sample.count);
  return { low: sample.mean - reach, high: sample.mean + reach };
}
