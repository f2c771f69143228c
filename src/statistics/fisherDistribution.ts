import cdf from "@stdlib/stats-base-dists-f-cdf";
import { mustLieIn } from "./statisticsError";

/**
 * Probability that an F variable is at least f: the p-value of an analysis of variance.
 *
 * Taken from the lower tail of 1/F, so that a small probability keeps its digits. Source: Fisher's F with its degrees
 * of freedom exchanged, Abramowitz & Stegun (1964), 26.6.9.
 *
 * @param f - ratio of mean squares, >= 0; infinite is allowed
 * @param above - degrees of freedom of the mean square above the line, > 0
 * @param below - degrees of freedom of the mean square below the line, > 0
 * @returns in [0, 1]
 * @throws {StatisticsError} `bad-parameter` for a negative ratio or degrees of freedom not above 0
 */
export function fisherUpperTail(f: number, above: number, below: number): number {
  mustLieIn("[0, ∞]", "f", f, f >= 0);
  for (const [name, degrees] of Object.entries({ above, below })) mustLieIn("(0, ∞]", name, degrees, degrees > 0);
  return f === 0 ? 1 : cdf(1 / f, below, above);
}
