import cdf from "@stdlib/stats-base-dists-normal-cdf";
import quantile from "@stdlib/stats-base-dists-normal-quantile";
import { mustLieIn } from "./statisticsError";

/**
 * Probability that a standard normal variable is at most z.
 *
 * @param z - standard deviations from the mean; infinite is allowed
 * @returns in [0, 1], accurate relative to its own size in the lower tail
 */
export function normalProbability(z: number): number {
  return cdf(z, 0, 1);
}

/**
 * Value that a standard normal variable stays below with a given probability.
 *
 * @param probability - in (0, 1)
 * @returns standard deviations from the mean
 * @throws {StatisticsError} `bad-parameter` outside (0, 1)
 */
export function normalQuantile(probability: number): number {
  mustLieIn("(0, 1)", "probability", probability, probability > 0 && probability < 1);
  return quantile(probability, 0, 1);
}
