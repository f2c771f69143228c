import { progressCurve } from "../../../progress/stops/progressCharts";
import {
  MEASURE_UNITS,
  type ProgressMeasure,
  type ProgressPoint,
  progressPoints,
} from "../../../progress/stops/progressMeasure";
import type { AttemptRecord } from "../../../records/attemptRecord";
import { type FittedLearningCurve, learningCurveValue } from "../../../statistics/learningCurve";
import { roomyDomain } from "../../parts/numbers";
import type { FigureModel, RunChartModel } from "../../pictures/charts/figureModel";
import { MOST_ROWS, measureAxis, measureText } from "./controlFigure";

/** Places along the curve that are drawn. */
const STEPS = 60;

function chartOf(points: readonly ProgressPoint[], curve: FittedLearningCurve | null, axis: string): RunChartModel {
  const low = points[0]?.number ?? 1;
  const high = points.at(-1)?.number ?? 2;
  const along = Array.from({ length: STEPS + 1 }, (_, i) => low + ((high - low) * i) / STEPS);
  const drawn = curve === null ? [] : along.map((x) => ({ x, y: learningCurveValue(curve, x) }));
  const band = curve === null ? [] : [low, high].map((x) => ({ x, ...curve.asymptoteInterval }));
  const heights = [
    ...points.map(({ value }) => value),
    ...drawn.map(({ y }) => y),
    ...band.flatMap((one) => [one.low, one.high]),
  ];
  return {
    kind: "run",
    x: { label: "attempt", domain: { low, high }, isCount: true },
    y: { label: axis, domain: roomyDomain(heights, 0.5) },
    dots: points.map(({ number: x, value: y }) => ({ x, y, isMarked: false })),
    lines: drawn.length === 0 ? [] : [{ look: "heavy", points: drawn }],
    band,
  };
}

/** Where practice leads: an exponential curve with the interval of its level, or why there is none. */
export function learningFigure(attempts: readonly AttemptRecord[], measure: ProgressMeasure): FigureModel {
  const title = "Learning curve";
  const points = progressPoints(attempts, measure);
  const curve = progressCurve(points);
  const fitted = curve.kind === "fitted" ? curve : null;
  const chart = points.length < 2 ? null : chartOf(points, fitted, measureAxis(measure));
  const text = (value: number) => measureText(measure, value);
  if (curve.kind !== "fitted") {
    const rows = points.slice(-MOST_ROWS).map(({ number, value }) => [`${number}`, text(value)]);
    const table = { caption: measureAxis(measure), head: ["attempt", "value"], rows };
    return { title, sentence: curve.message, chart, table: chart && table };
  }
  const half = Math.LN2 / curve.rate;
  return {
    title,
    sentence: `At this rate you level off at about ${text(curve.asymptote)} ${MEASURE_UNITS[measure]}, between ${text(curve.asymptoteInterval.low)} and ${text(curve.asymptoteInterval.high)}. Every ${half.toFixed(0)} attempts cover half of what is left.`,
    chart,
    table: {
      caption: `Learning curve, ${measureAxis(measure)}`,
      head: ["attempt", "on the curve"],
      rows: [0, 0.25, 0.5, 0.75, 1].map((part) => {
        const number = Math.round(curve.first + part * ((points.at(-1)?.number ?? curve.first) - curve.first));
        return [`${number}`, text(learningCurveValue(curve, number))];
      }),
    },
    note: "An exponential curve fitted by least squares; the range of its level has 95 % confidence.",
  };
}
