import cdf from "@stdlib/stats-base-dists-t-cdf";
import quantile from "@stdlib/stats-base-dists-t-quantile";
import { mustLieIn } from "./statisticsError";

const assertDegrees = (degrees: number) => mustLieIn("(0, ∞]", "degreesOfFreedom", degrees, degrees > 0);

/**
 * Probability that a Student t variable is at most t.
 *
 * @param t - dimensionless; infinite is allowed
 * @param degreesOfFreedom - > 0, not necessarily whole
 * @returns in [0, 1]
 * @throws {StatisticsError} `bad-parameter` for degrees of freedom not above 0
 */
export function studentProbability(t: number, degreesOfFreedom: number): number {
  assertDegrees(degreesOfFreedom);
  return cdf(t, degreesOfFreedom);
}

/**
 * Value that a Student t variable stays below with a given probability.
 *
 * @param probability - in (0, 1)
 * @param degreesOfFreedom - > 0, not necessarily whole
 * @returns dimensionless
 * @throws {StatisticsError} `bad-parameter` for a probability outside (0, 1) or degrees of freedom not above 0
 */
export function studentQuantile(probability: number, degreesOfFreedom: number): number {
  assertDegrees(degreesOfFreedom);
  mustLieIn("(0, 1)", "probability", probability, probability > 0 && probability < 1);
  return quantile(probability, degreesOfFreedom);
}
