import type { Chance } from "./chance";
import { normalQuantile } from "./normalDistribution";

/**
 * A normal deviate by inversion, so that one seed gives one sequence.
 *
 * @param spread - standard deviation, >= 0
 */
export function drawNormal(chance: Chance, mean: number, spread: number): number {
  // Halfway between two neighbors of the generator's grid: never 0, whose quantile is infinite.
  return spread === 0 ? mean : mean + spread * normalQuantile(chance() + 2 ** -54);
}
