import type { Interval } from "./interval";
import { normalProbability, normalQuantile } from "./normalDistribution";
import type { SampleSummary } from "./sample";
import { StatisticsError } from "./statisticsError";
import { studentProbability, studentQuantile } from "./studentDistribution";

/** What readings of limited resolution tell of the mean behind them. */
export interface CoarseMean {
  readonly mean: number;
  /** Of the mean, from the scatter of the readings and from their resolution together. */
  readonly standardUncertainty: number;
  /** Effective degrees of freedom; infinite where the scatter adds nothing. */
  readonly degreesOfFreedom: number;
}

/** Standard uncertainty that a resolution alone leaves: delta / sqrt(12). Source: JCGM 100:2008 (GUM), F.2.2.1. */
export function resolutionUncertainty(resolution: number): number {
  return resolution / Math.sqrt(12);
}

/**
 * The mean of readings that go in steps. The resolution is the same for every reading, so averaging does not lessen it.
 *
 * Sources: JCGM 100:2008 (GUM), F.2.2.1 (resolution), 5.1.2 (combination), G.4.1 (Welch-Satterthwaite).
 *
 * @param resolution - step of the readings, same unit, >= 0
 * @throws {StatisticsError} `too-few-values` below two readings, `bad-parameter` for a resolution that is none
 */
export function coarseMean({ count, mean, standardDeviation }: SampleSummary, resolution: number): CoarseMean {
  if (count < 2) throw new StatisticsError("too-few-values", "The uncertainty of a mean needs at least 2 values.");
  if (!(resolution >= 0 && Number.isFinite(resolution))) {
    throw new StatisticsError("bad-parameter", `A resolution is a number of 0 or more, not ${resolution}.`);
  }
  const scatter = standardDeviation ** 2 / count;
  const variance = scatter + resolutionUncertainty(resolution) ** 2;
  const degreesOfFreedom = scatter === 0 ? Infinity : (variance / scatter) ** 2 * (count - 1);
  return { mean, standardUncertainty: Math.sqrt(variance), degreesOfFreedom };
}

/** Beyond so many degrees of freedom a t distribution is the normal one to the last digit shown. */
const NORMAL_FROM = 1e6;

/** Probability that the mean lies within limits, both included. Source: JCGM 106:2012, clause 7. */
export function probabilityCoarseMeanConforms(known: CoarseMean, { low, high }: Interval): number {
  const { mean, standardUncertainty: scale, degreesOfFreedom } = known;
  if (scale === 0) return mean >= low && mean <= high ? 1 : 0;
  const below = (x: number) =>
    degreesOfFreedom > NORMAL_FROM ? normalProbability(x) : studentProbability(x, degreesOfFreedom);
  const [from, to] = [(low - mean) / scale, (high - mean) / scale];
  // Above the center both are near 1 and their difference loses its digits: mirror it into the lower tail.
  return from > 0 ? below(-from) - below(-to) : below(to) - below(from);
}

/** 95 % interval of the mean. Source: JCGM 100:2008, G.4.1. */
export function coarseInterval({ mean, standardUncertainty, degreesOfFreedom }: CoarseMean): Interval {
  const upper = 0.975;
  const factor = degreesOfFreedom > NORMAL_FROM ? normalQuantile(upper) : studentQuantile(upper, degreesOfFreedom);
  return { low: mean - factor * standardUncertainty, high: mean + factor * standardUncertainty };
}

/** The difference of two means of readings that go in steps. Source: JCGM 100:2008, 5.1.2 and G.4.1. */
export function coarseDifference(one: CoarseMean, other: CoarseMean): CoarseMean {
  const [a, b] = [one.standardUncertainty ** 2, other.standardUncertainty ** 2];
  const doubt = a ** 2 / one.degreesOfFreedom + b ** 2 / other.degreesOfFreedom;
  return {
    mean: one.mean - other.mean,
    standardUncertainty: Math.sqrt(a + b),
    degreesOfFreedom: doubt === 0 ? Infinity : (a + b) ** 2 / doubt,
  };
}
