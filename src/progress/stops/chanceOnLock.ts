import { probabilityOfConformance } from "../../statistics/conformance";
import type { Interval } from "../../statistics/interval";
import { normalQuantile } from "../../statistics/normalDistribution";
import { type SampleSummary, sampleSummary } from "../../statistics/sample";
import { nearStops, type StoppedAttempt } from "./nearStops";

/** Predicted chance of opening a lock. */
export interface ChanceOnLock {
  /** In [0, 1]. */
  readonly chance: number;
  /** 95 %; what the number of stops leaves open of the chance. */
  readonly interval: Interval;
  /** Fewest stops at one place that it rests on. */
  readonly stops: number;
}

/** Stops at each place below which a bias and a spread say too little. */
export const FEWEST_STOPS = 5;
/** Upper 97.5 % point: the interval holds 95 %. */
const REACH = normalQuantile(0.975);

const density = (z: number) => Math.exp(-(z * z) / 2) / Math.sqrt(2 * Math.PI);

/** One place: the chance that a stop is good, and the variance of its logarithm. */
function place({ count, mean, standardDeviation: s }: SampleSummary, tolerance: number) {
  const chance = probabilityOfConformance({ mean, standardUncertainty: s }, { low: -tolerance, high: tolerance });
  if (s === 0) return { chance, variance: 0 };
  const high = (tolerance - mean) / s;
  const low = (-tolerance - mean) / s;
  const byBias = -(density(high) - density(low)) / s;
  const bySpread = -(high * density(high) - low * density(low)) / s;
  const variance = byBias ** 2 * (s ** 2 / count) + bySpread ** 2 * (s ** 2 / (2 * (count - 1)));
  return { chance, variance: chance === 0 ? Infinity : variance / chance ** 2 };
}

/** An interval on the scale of log odds, which keeps it within 0 and 1. */
function logitInterval(chance: number, variance: number): Interval {
  if (chance <= 0 || chance >= 1) return { low: chance, high: chance };
  const logit = Math.log(chance / (1 - chance));
  const reach = (REACH * Math.sqrt(variance)) / (1 - chance);
  return { low: 1 / (1 + Math.exp(reach - logit)), high: 1 / (1 + Math.exp(-reach - logit)) };
}

function errorsByPlace(attempts: readonly StoppedAttempt[]): number[][] {
  const near = nearStops(attempts);
  const steps = new Set(near.map(({ step }) => step));
  return [...steps].map((k) => near.filter(({ step }) => step === k).map(({ error }) => error));
}

const fewest = (errors: readonly (readonly number[])[]) =>
  errors.length === 0 ? 0 : Math.min(...errors.map(({ length }) => length));

/** Stops at the place that has fewest, of those that have any; 0 without a stop. */
export const fewestStops = (attempts: readonly StoppedAttempt[]): number => fewest(errorsByPlace(attempts));

/**
 * Predicted chance of opening a lock of a given tolerance, from one's own stops.
 *
 * Closed form: the product over the numbers of P(|e| <= tolerance), e normal with the bias and spread of the stops at
 * that place. The uncertainty is carried through by the derivatives in bias and spread (JCGM 100:2008, 5.1.2), with
 * Var(s) = s^2 / (2 (n - 1)), on the scale of log odds. Turns are taken to be counted right.
 *
 * @param attempts - at one kind of lock
 * @param tolerance - of every gate, graduations, >= 0
 * @returns null below 5 stops at some place
 */
export function chanceOnLock(attempts: readonly StoppedAttempt[], tolerance: number): ChanceOnLock | null {
  const errors = errorsByPlace(attempts);
  const stops = fewest(errors);
  if (stops < FEWEST_STOPS) return null;
  const places = errors.map((sample) => place(sampleSummary(sample), tolerance));
  const chance = places.reduce((product, one) => product * one.chance, 1);
  const variance = places.reduce((sum, one) => sum + one.variance, 0);
  return { chance, interval: logitInterval(chance, variance), stops };
}
