import { compensatedSum } from "./compensatedSum";
import { mustHold } from "./statisticsError";

/** What is left of a sample once it is only wanted for its mean. */
export interface SampleSummary {
  /** Number of values, integer >= 1. */
  readonly count: number;
  /** In the unit of the values. */
  readonly mean: number;
  /** With n - 1, in the unit of the values, >= 0. */
  readonly standardDeviation: number;
}

/** Refuses what is no sample. @throws {StatisticsError} `empty-sample`, `too-few-values`, `not-finite` */
export function assertSample(values: readonly number[], least: number): void {
  mustHold(values.length > 0, "empty-sample");
  mustHold(values.length >= least, "too-few-values", [], { least });
  mustHold(values.every(Number.isFinite), "not-finite");
}

/**
 * Arithmetic mean.
 *
 * Summed with compensation, then corrected by the mean of what is left over, so that a large common offset costs no
 * digits.
 *
 * @param values - any unit, finite, at least one
 * @returns same unit, between the smallest and the largest value
 * @throws {StatisticsError} `empty-sample`, or `not-finite`
 */
export function mean(values: readonly number[]): number {
  assertSample(values, 1);
  const rough = compensatedSum(values) / values.length;
  return rough + compensatedSum(values.map((value) => value - rough)) / values.length;
}

/**
 * Sum of the squared deviations from the mean.
 *
 * The corrected two-pass algorithm: the square of the summed deviations, zero but for rounding, is taken off again.
 * Source: Chan, Golub & LeVeque (1983), Am. Stat. 37:242-247.
 *
 * @param values - any unit, finite, at least one
 * @returns unit squared, >= 0
 * @throws {StatisticsError} `empty-sample`, or `not-finite`
 */
export function sumOfSquaredDeviations(values: readonly number[]): number {
  const center = mean(values);
  const deviations = values.map((value) => value - center);
  const squares = compensatedSum(deviations.map((deviation) => deviation * deviation));
  return Math.max(0, squares - compensatedSum(deviations) ** 2 / values.length);
}

/**
 * Standard deviation of a sample, with n - 1. Source: JCGM 100:2008, 4.2.2, equation 4.
 *
 * @param values - any unit, finite, at least two
 * @returns same unit, >= 0
 * @throws {StatisticsError} `empty-sample`, `too-few-values` for a single value, or `not-finite`
 */
export function standardDeviation(values: readonly number[]): number {
  assertSample(values, 2);
  return Math.sqrt(sumOfSquaredDeviations(values) / (values.length - 1));
}

/**
 * Distance from the smallest to the largest value.
 *
 * @param values - any unit, finite, at least one
 * @returns same unit, >= 0
 * @throws {StatisticsError} `empty-sample`, or `not-finite`
 */
export function spread(values: readonly number[]): number {
  assertSample(values, 1);
  return values.reduce((a, b) => Math.max(a, b)) - values.reduce((a, b) => Math.min(a, b));
}

/**
 * Count, mean and standard deviation at once.
 *
 * @param values - any unit, finite, at least two
 * @returns in the unit of the values
 * @throws {StatisticsError} `empty-sample`, `too-few-values` for a single value, or `not-finite`
 */
export function sampleSummary(values: readonly number[]): SampleSummary {
  return { count: values.length, mean: mean(values), standardDeviation: standardDeviation(values) };
}
