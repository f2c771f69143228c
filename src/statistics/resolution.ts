import type { Interval } from "./interval";
import { normalProbability, normalQuantile } from "./normalDistribution";
import type { SampleSummary } from "./sample";
import { mustHold, mustLieIn } from "./statisticsError";
import { studentProbability, studentQuantile } from "./studentDistribution";

/** How far a mean is known. */
interface Uncertainty {
  readonly standardUncertainty: number;
  /** Effective degrees of freedom; infinite where scatter adds nothing. */
  readonly degreesOfFreedom: number;
}

/**
 * What readings of limited resolution tell of the mean behind them: its uncertainty from scatter and resolution together,
 * and from scatter alone.
 *
 * Both are needed. The effective degrees of freedom grow with the resolution, so the t factor falls, and of a few readings
 * the two together can claim more than the scatter alone. A coarser reading never tells more: the wider of both counts.
 */
export interface CoarseMean extends Uncertainty {
  readonly mean: number;
  readonly scatter: Uncertainty;
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
  mustHold(count >= 2, "too-few-values", [], { least: 2 });
  mustLieIn("[0, ∞)", "resolution", resolution, resolution >= 0 && Number.isFinite(resolution));
  const scattered = standardDeviation ** 2 / count;
  const variance = scattered + resolutionUncertainty(resolution) ** 2;
  const degreesOfFreedom = scattered === 0 ? Infinity : (variance / scattered) ** 2 * (count - 1);
  const scatter = { standardUncertainty: Math.sqrt(scattered), degreesOfFreedom: count - 1 };
  return { mean, standardUncertainty: Math.sqrt(variance), degreesOfFreedom, scatter };
}

/** Beyond so many degrees of freedom a t distribution is the normal one to the last digit shown. */
const NORMAL_FROM = 1e6;

function probabilityBetween(mean: number, { low, high }: Interval, known: Uncertainty): number {
  const { standardUncertainty: scale, degreesOfFreedom } = known;
  if (scale === 0) return mean >= low && mean <= high ? 1 : 0;
  const below = (x: number) =>
    degreesOfFreedom > NORMAL_FROM ? normalProbability(x) : studentProbability(x, degreesOfFreedom);
  const [from, to] = [(low - mean) / scale, (high - mean) / scale];
  // Above the center both are near 1 and their difference loses its digits: mirror it into the lower tail.
  return from > 0 ? below(-from) - below(-to) : below(to) - below(from);
}

/**
 * Probability that the mean lies within limits, both included; the one that says less, of scatter with resolution and of
 * scatter alone. Source: JCGM 106:2012, clause 7.
 */
export function probabilityCoarseMeanConforms(known: CoarseMean, limits: Interval): number {
  const withSteps = probabilityBetween(known.mean, limits, known);
  const alone = probabilityBetween(known.mean, limits, known.scatter);
  return Math.abs(withSteps - 0.5) < Math.abs(alone - 0.5) ? withSteps : alone;
}

function halfWidth({ standardUncertainty, degreesOfFreedom }: Uncertainty): number {
  const upper = 0.975;
  const factor = degreesOfFreedom > NORMAL_FROM ? normalQuantile(upper) : studentQuantile(upper, degreesOfFreedom);
  return factor * standardUncertainty;
}

/** 95 % interval of the mean; the wider, of scatter with resolution and of scatter alone. Source: JCGM 100:2008, G.4.1. */
export function coarseInterval(known: CoarseMean): Interval {
  const half = Math.max(halfWidth(known), halfWidth(known.scatter));
  return { low: known.mean - half, high: known.mean + half };
}

function together(one: Uncertainty, other: Uncertainty): Uncertainty {
  const [a, b] = [one.standardUncertainty ** 2, other.standardUncertainty ** 2];
  const doubt = a ** 2 / one.degreesOfFreedom + b ** 2 / other.degreesOfFreedom;
  return { standardUncertainty: Math.sqrt(a + b), degreesOfFreedom: doubt === 0 ? Infinity : (a + b) ** 2 / doubt };
}

/** The difference of two means of readings that go in steps. Source: JCGM 100:2008, 5.1.2 and G.4.1. */
export function coarseDifference(one: CoarseMean, other: CoarseMean): CoarseMean {
  return { mean: one.mean - other.mean, ...together(one, other), scatter: together(one.scatter, other.scatter) };
}
