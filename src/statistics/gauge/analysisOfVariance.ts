import { compensatedSum } from "../compensatedSum";
import { fisherUpperTail } from "../fisherDistribution";
import { mean, sumOfSquaredDeviations } from "../sample";
import { mustHold } from "../statisticsError";

/** One line of an analysis of variance. */
export interface VarianceLine {
  /** Unit of the values, squared. */
  readonly sumOfSquares: number;
  /** Integer >= 1. */
  readonly degreesOfFreedom: number;
  /** Sum of squares by degrees of freedom. */
  readonly meanSquare: number;
}

/** Ratio of two mean squares, and how often chance alone makes one as large. */
export interface VarianceRatio {
  /** >= 0; infinite if nothing is left below the line. */
  readonly f: number;
  /** In [0, 1]. */
  readonly p: number;
}

/** Whether groups differ by more than their own spread explains. */
export interface OneWayAnalysis extends VarianceRatio {
  readonly between: VarianceLine;
  readonly within: VarianceLine;
  /** Within groups, in the unit of the values, >= 0. */
  readonly residualStandardDeviation: number;
}

/**
 * One line of an analysis of variance, with its mean square.
 *
 * @param sumOfSquares - unit squared, >= 0
 * @param degreesOfFreedom - integer >= 1
 */
export function varianceLine(sumOfSquares: number, degreesOfFreedom: number): VarianceLine {
  return { sumOfSquares, degreesOfFreedom, meanSquare: sumOfSquares / degreesOfFreedom };
}

/**
 * F ratio of two lines and its p-value.
 *
 * @param above - the line to be tested
 * @param below - the line it is tested against
 * @returns infinite F and p = 0 if nothing is left below the line; F = 0 and p = 1 if nothing is left on either
 */
export function varianceRatio(above: VarianceLine, below: VarianceLine): VarianceRatio {
  const f = above.meanSquare === 0 ? 0 : above.meanSquare / below.meanSquare;
  return { f, p: fisherUpperTail(f, above.degreesOfFreedom, below.degreesOfFreedom) };
}

/**
 * One-way analysis of variance.
 *
 * Source: NIST/SEMATECH e-Handbook, 7.4.3.3.
 *
 * @param groups - at least two, each with at least one finite value, all in one unit; more values than groups
 * @returns both lines of the table, their ratio and the standard deviation within groups
 * @throws {StatisticsError} `too-few-values` if there is nothing to compare, `empty-sample` or `not-finite` for a group,
 *   `no-spread` if all values are the same
 */
export function oneWayAnalysis(groups: readonly (readonly number[])[]): OneWayAnalysis {
  const all = groups.flat();
  const degreesWithin = all.length - groups.length;
  // Comparing needs two groups and more values than groups.
  const least = Math.max(2, groups.length) + 1;
  mustHold(groups.length >= 2 && degreesWithin >= 1, "too-few-values", [], { least });
  const grand = mean(all);
  const between = varianceLine(
    compensatedSum(groups.map((group) => group.length * (mean(group) - grand) ** 2)),
    groups.length - 1,
  );
  const within = varianceLine(compensatedSum(groups.map(sumOfSquaredDeviations)), degreesWithin);
  mustHold(between.sumOfSquares + within.sumOfSquares !== 0, "no-spread");
  const residualStandardDeviation = Math.sqrt(within.meanSquare);
  return { between, within, ...varianceRatio(between, within), residualStandardDeviation };
}
