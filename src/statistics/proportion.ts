import betaQuantile from "@stdlib/stats-base-dists-beta-quantile";
import { type Interval, USUAL_LEVEL, upperProbability } from "./interval";
import { normalQuantile } from "./normalDistribution";
import { mustLieIn } from "./statisticsError";

function assertCounts(successes: number, trials: number): void {
  mustLieIn("[1, ∞)", "trials", trials, Number.isInteger(trials) && trials >= 1, "bad-count");
  const isPart = Number.isInteger(successes) && successes >= 0 && successes <= trials;
  mustLieIn(`[0, ${trials}]`, "successes", successes, isPart, "bad-count");
}

/**
 * Wilson score interval of a proportion, without continuity correction.
 *
 * Covers close to its level on average, sometimes a little less. Source: Wilson (1927), J. Am. Stat. Assoc.
 * 22:209-212; written out as method 3 of Newcombe (1998), Statist. Med. 17:857-872.
 *
 * @param successes - count, integer in [0, trials]
 * @param trials - count, integer >= 1
 * @param level - two-sided, in (0, 1)
 * @returns both ends in [0, 1]
 * @throws {StatisticsError} `bad-count` if the counts describe no experiment, or `bad-level`
 */
export function wilsonInterval(successes: number, trials: number, level = USUAL_LEVEL): Interval {
  assertCounts(successes, trials);
  const z = normalQuantile(upperProbability(level));
  const failures = trials - successes;
  const reach = z * Math.sqrt(z * z + (4 * successes * failures) / trials);
  const scale = 2 * (trials + z * z);
  // At no success the lower end is exactly 0, at no failure the upper exactly 1; rounding must not move them.
  const low = successes === 0 ? 0 : (2 * successes + z * z - reach) / scale;
  const high = failures === 0 ? 1 : (2 * successes + z * z + reach) / scale;
  return { low, high };
}

/**
 * Clopper-Pearson ("exact") interval of a proportion.
 *
 * Never covers less than its level, usually more. Source: Clopper & Pearson (1934), Biometrika 26:404-413; method 5 of
 * Newcombe (1998), Statist. Med. 17:857-872, by quantiles of the beta distribution.
 *
 * @param successes - count, integer in [0, trials]
 * @param trials - count, integer >= 1
 * @param level - two-sided, in (0, 1)
 * @returns both ends in [0, 1]
 * @throws {StatisticsError} `bad-count` if the counts describe no experiment, or `bad-level`
 */
export function clopperPearsonInterval(successes: number, trials: number, level = USUAL_LEVEL): Interval {
  assertCounts(successes, trials);
  const upper = upperProbability(level);
  const failures = trials - successes;
  return {
    low: successes === 0 ? 0 : betaQuantile(1 - upper, successes, failures + 1),
    high: failures === 0 ? 1 : betaQuantile(upper, successes + 1, failures),
  };
}

/**
 * How many trials without a single failure show a reliability at a confidence.
 *
 * The classical binomial form; the Bayesian one with a uniform prior needs one trial fewer. Source: success-run
 * theorem, n = ln(1 - C) / ln R rounded up.
 *
 * @param confidence - C, in (0, 1)
 * @param reliability - R, probability of success to be shown, in (0, 1)
 * @returns trials, integer >= 1
 * @throws {StatisticsError} `bad-parameter` for a confidence or reliability outside (0, 1)
 */
export function zeroFailureSampleSize(confidence: number, reliability: number): number {
  for (const [name, value] of Object.entries({ confidence, reliability }))
    mustLieIn("(0, 1)", name, value, value > 0 && value < 1);
  const trials = Math.log1p(-confidence) / Math.log(reliability);
  // 1 - 0.9 is not quite 0.1, so a whole number of trials may come out a hair above itself.
  const nearest = Math.round(trials);
  return Math.max(1, Math.abs(trials - nearest) <= 1e-12 * trials ? nearest : Math.ceil(trials));
}
