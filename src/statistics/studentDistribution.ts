import cdf from "@stdlib/stats-base-dists-t-cdf";
import quantile from "@stdlib/stats-base-dists-t-quantile";
import { StatisticsError } from "./statisticsError";

function assertDegrees(degreesOfFreedom: number): void {
  if (!(degreesOfFreedom > 0)) {
    throw new StatisticsError("bad-parameter", `Degrees of freedom are above 0, and ${degreesOfFreedom} is not.`);
  }
}

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
  if (!(probability > 0 && probability < 1)) {
    throw new StatisticsError("bad-parameter", `A quantile needs a probability between 0 and 1, not ${probability}.`);
  }
  return quantile(probability, degreesOfFreedom);
}
