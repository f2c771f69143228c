import { type Interval, USUAL_LEVEL, upperProbability } from "./interval";
import type { SampleSummary } from "./sample";
import { mustHold } from "./statisticsError";
import { studentQuantile } from "./studentDistribution";

/** How far two means lie apart, and how well that is known. */
export interface DifferenceOfMeans extends Interval {
  /** First mean minus second mean. */
  readonly difference: number;
  /** Standard error of the difference, in its unit, >= 0. */
  readonly standardError: number;
  /** Welch-Satterthwaite, > 0, not whole. */
  readonly degreesOfFreedom: number;
}

/**
 * Interval of the difference of two means, without assuming that both spread alike.
 *
 * Source: Welch (1947), Biometrika 34:28-35; Satterthwaite (1946), Biometrics Bull. 2:110-114; NIST/SEMATECH
 * e-Handbook, 1.3.5.3.
 *
 * @param first - any unit, count >= 2
 * @param second - same unit, count >= 2
 * @param level - two-sided, in (0, 1)
 * @returns same unit; if neither sample spreads, a single point with the degrees of freedom of both together
 * @throws {StatisticsError} `too-few-values` for a count below 2, or `bad-level`
 */
export function welchInterval(first: SampleSummary, second: SampleSummary, level = USUAL_LEVEL): DifferenceOfMeans {
  const upper = upperProbability(level);
  mustHold(first.count >= 2 && second.count >= 2, "too-few-values", [], { least: 2 });
  const a = first.standardDeviation ** 2 / first.count;
  const b = second.standardDeviation ** 2 / second.count;
  const standardError = Math.sqrt(a + b);
  // The shares of the variance, not the variances themselves: their squares neither overflow nor vanish.
  const shareA = standardError === 0 ? 0.5 : a / (a + b);
  const shareB = 1 - shareA;
  const degreesOfFreedom =
    standardError === 0
      ? first.count + second.count - 2
      : 1 / (shareA ** 2 / (first.count - 1) + shareB ** 2 / (second.count - 1));
  const difference = first.mean - second.mean;
  const reach = studentQuantile(upper, degreesOfFreedom) * standardError;
  return { difference, standardError, degreesOfFreedom, low: difference - reach, high: difference + reach };
}
