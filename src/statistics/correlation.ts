import { compensatedSum } from "./compensatedSum";
import { type Interval, USUAL_LEVEL, upperProbability } from "./interval";
import { normalQuantile } from "./normalDistribution";
import { assertSample, mean, sumOfSquaredDeviations } from "./sample";
import { mustHold } from "./statisticsError";

/**
 * Pearson's correlation of two samples taken in pairs.
 *
 * With one of the two 0 or 1 throughout it is the point-biserial correlation. Source: Pearson (1895), Proc. R. Soc. Lond.
 * 58:240-242.
 *
 * @param one - any unit, finite, at least two
 * @param other - any unit, finite, as many as `one`
 * @returns in [-1, 1]; null where one of the two does not vary, for then there is none
 * @throws {StatisticsError} `empty-sample`, `too-few-values`, `not-finite`, or where they are not in pairs
 */
export function correlation(one: readonly number[], other: readonly number[]): number | null {
  assertSample(one, 2);
  assertSample(other, 2);
  mustHold(one.length === other.length, "too-few-values", [], { least: Math.max(one.length, other.length) });
  const scale = Math.sqrt(sumOfSquaredDeviations(one) * sumOfSquaredDeviations(other));
  if (scale === 0) return null;
  const [oneMean, otherMean] = [mean(one), mean(other)];
  const products = one.map((value, k) => (value - oneMean) * ((other[k] ?? 0) - otherMean));
  return Math.min(1, Math.max(-1, compensatedSum(products) / scale));
}

/** Fewest pairs that an interval of their correlation is made of. */
const LEAST_PAIRS = 4;

/**
 * Interval of a correlation, by Fisher's transformation: good for pairs from a bivariate normal distribution, and a rough
 * guide for others.
 *
 * Source: Fisher (1921), Metron 1:3-32: artanh r is nearly normal, with standard deviation 1 / sqrt(n - 3).
 *
 * @param found - in [-1, 1]
 * @param pairs - count of pairs
 * @param level - two-sided, in (0, 1)
 * @returns within [-1, 1]; null below four pairs
 * @throws {StatisticsError} `bad-level`
 */
export function correlationInterval(found: number, pairs: number, level = USUAL_LEVEL): Interval | null {
  const reach = normalQuantile(upperProbability(level)) / Math.sqrt(Math.max(1, pairs - 3));
  if (pairs < LEAST_PAIRS) return null;
  // At -1 and 1 the transformation is infinite, and the interval a single point.
  const center = Math.atanh(found);
  return { low: Math.tanh(center - reach), high: Math.tanh(center + reach) };
}
