import type { Interval } from "./interval";
import { assertSample, mean } from "./sample";
import { mustLieIn } from "./statisticsError";

/** A chart of a process over time, with the limits it stays within while nothing but chance acts on it. */
export interface ControlChart {
  /** One point for each value, in order, in the unit of the values. */
  readonly points: readonly number[];
  /** Center line, same unit. */
  readonly center: number;
  /** Control limits, same unit. */
  readonly limits: Interval;
  /** Places of the points beyond the limits, counted from 0. */
  readonly beyond: readonly number[];
}

/** What an exponentially weighted chart takes the steady process to be. */
export interface EwmaSetting {
  /** Weight of the newest value, in (0, 1]. */
  readonly lambda: number;
  /** Level of the steady process, in the unit of the values; also the first average. */
  readonly start: number;
  /** Standard deviation of single values of the steady process, same unit, > 0. */
  readonly standardDeviation: number;
  /** Distance of the limits from the center, in standard deviations of the average, > 0; usually 3. */
  readonly width: number;
}

/** Mean moving range of two normal values, in standard deviations: d2 for n = 2. */
const RANGE_OF_TWO = 1.128;
const USUAL_WIDTH = 3;

function chart(points: readonly number[], center: number, reach: number): ControlChart {
  const limits = { low: center - reach, high: center + reach };
  const beyond = points.flatMap((point, i) => (point < limits.low || point > limits.high ? [i] : []));
  return { points, center, limits, beyond };
}

function assertSetting({ lambda, start, standardDeviation, width }: EwmaSetting): void {
  mustLieIn("(0, 1]", "lambda", lambda, lambda > 0 && lambda <= 1);
  mustLieIn("(-∞, ∞)", "start", start, Number.isFinite(start));
  mustLieIn("(0, ∞]", "standardDeviation", standardDeviation, standardDeviation > 0);
  mustLieIn("(0, ∞]", "width", width, width > 0);
}

/**
 * Exponentially weighted moving average chart: finds a small lasting shift sooner than single values do.
 *
 * The limits are those of the long run, too wide for the first few points. Source: NIST/SEMATECH e-Handbook, 6.3.2.4.
 *
 * @param values - in the order they were taken, any unit, at least one
 * @param setting - same unit; from earlier values than those charted
 * @returns the average after each value
 * @throws {StatisticsError} `empty-sample`, `not-finite`, or `bad-parameter` for a setting out of range
 */
export function ewmaChart(values: readonly number[], setting: EwmaSetting): ControlChart {
  assertSample(values, 1);
  assertSetting(setting);
  const { lambda, start, standardDeviation, width } = setting;
  let average = start;
  const points = values.map((value) => {
    average = lambda * value + (1 - lambda) * average;
    return average;
  });
  return chart(points, start, width * standardDeviation * Math.sqrt(lambda / (2 - lambda)));
}

/** Individuals chart, with the moving range its limits come from. */
export interface IndividualsChart extends ControlChart {
  /** Mean distance of neighboring values, in their unit, >= 0. */
  readonly meanMovingRange: number;
}

/**
 * Chart of single values, its limits taken from their moving range so that a drift does not widen them.
 *
 * Source: NIST/SEMATECH e-Handbook, 6.3.2.2, with d2 = 1.128.
 *
 * @param values - in the order they were taken, any unit, at least two
 * @param width - distance of the limits from the center, in standard deviations, > 0
 * @returns the values with their center and limits
 * @throws {StatisticsError} `empty-sample`, `too-few-values`, `not-finite`, or `bad-parameter` for a width not above 0
 */
export function individualsChart(values: readonly number[], width = USUAL_WIDTH): IndividualsChart {
  assertSample(values, 2);
  mustLieIn("(0, ∞]", "width", width, width > 0);
  const meanMovingRange = mean(values.slice(1).map((value, i) => Math.abs(value - (values[i] ?? value))));
  return { ...chart(values, mean(values), (width * meanMovingRange) / RANGE_OF_TWO), meanMovingRange };
}
