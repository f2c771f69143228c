import { type ControlChart, ewmaChart, type IndividualsChart, individualsChart } from "../../statistics/controlChart";
import { FEWEST_ATTEMPTS, fitLearningCurve, type NoCurveReason } from "../../statistics/learningCurve";
import { countText } from "../../wording/amountWords";
import type { ProgressPoint } from "./progressMeasure";

/** Control charts of one measure. */
export interface ProgressCharts {
  /** Of all points; its limits are those of the baseline. */
  readonly individuals: ControlChart;
  /** Of the points after the baseline; null where there are none, or the baseline does not vary. */
  readonly ewma: ControlChart | null;
  /** Points that the limits were taken from: the first ones. */
  readonly baseline: number;
}

/** First attempts that tell what is usual for a person. */
const USUAL_BASELINE = 10;
/** Mean moving range of two normal values, in standard deviations: d2 for n = 2. */
const RANGE_OF_TWO = 1.128;
const LAMBDA = 0.3;
const WIDTH = 3;

function withBaselineLimits(values: readonly number[], { center, limits }: IndividualsChart): ControlChart {
  const beyond = values.flatMap((value, i) => (value < limits.low || value > limits.high ? [i] : []));
  return { points: values, center, limits, beyond };
}

/**
 * Individuals and EWMA chart of one measure, held against the first attempts.
 *
 * Sources: see `statistics/controlChart`; lambda 0.3 and width 3 as in the NIST/SEMATECH e-Handbook, 6.3.2.4.
 *
 * @param points - oldest first
 * @param baseline - points that set the limits, a whole number >= 2
 * @returns null for fewer than two points
 */
export function progressCharts(points: readonly ProgressPoint[], baseline = USUAL_BASELINE): ProgressCharts | null {
  if (points.length < 2) return null;
  const values = points.map(({ value }) => value);
  const first = Math.min(baseline, values.length);
  const usual = individualsChart(values.slice(0, first));
  const standardDeviation = usual.meanMovingRange / RANGE_OF_TWO;
  const later = values.slice(first);
  const canWeigh = later.length > 0 && standardDeviation > 0;
  return {
    individuals: withBaselineLimits(values, usual),
    ewma: canWeigh ? ewmaChart(later, { lambda: LAMBDA, start: usual.center, standardDeviation, width: WIDTH }) : null,
    baseline: first,
  };
}

/** Why there is no learning curve, in a sentence. */
const NO_CURVE = {
  "no-trend": "No change beyond chance yet.",
  "too-sudden": "All of the change lies between two attempts, so no curve describes it.",
  "no-plateau": "It does not level off yet, so where it leads is a guess.",
} as const;

function noCurve(reason: NoCurveReason, attempts: number): string {
  if (reason !== "too-few-attempts") return NO_CURVE[reason];
  const more = Math.max(1, FEWEST_ATTEMPTS - attempts);
  return `Needs ${countText(more, "more attempt")} for a curve.`;
}

/**
 * Exponential learning curve of one measure, or a sentence that says why there is none.
 *
 * @param points - of one person
 */
export function progressCurve(points: readonly ProgressPoint[]) {
  const curve = fitLearningCurve(points);
  return curve.kind === "fitted" ? curve : { ...curve, message: noCurve(curve.reason, points.length) };
}
