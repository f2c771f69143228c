import normalCdf from "@stdlib/stats-base-dists-normal-cdf";
import normalQuantile from "@stdlib/stats-base-dists-normal-quantile";
import type { Chance } from "./chance";

/**
 * Probability that a normal variable lies within [low, high].
 *
 * @param spread - standard deviation, >= 0
 */
export function normalWithin(low: number, high: number, mean: number, spread: number): number {
  // With no spread the cumulative steps up at the mean itself, so the lower end must be tested apart.
  if (spread === 0) return mean >= low && mean <= high ? 1 : 0;
  return normalCdf(high, mean, spread) - normalCdf(low, mean, spread);
}

/**
 * A normal deviate by inversion, so that one seed gives one sequence.
 *
 * @param spread - standard deviation, >= 0
 */
export function drawNormal(chance: Chance, mean: number, spread: number): number {
  // Halfway between two neighbors of the generator's grid: never 0, whose quantile is infinite.
  const p = chance() + 2 ** -54;
  return spread === 0 ? mean : normalQuantile(p, mean, spread);
}
