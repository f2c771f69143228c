import { type ProgressCharts, progressCharts } from "../../../progress/stops/progressCharts";
import {
  MEASURE_UNITS,
  type ProgressMeasure,
  type ProgressPoint,
  progressPoints,
} from "../../../progress/stops/progressMeasure";
import type { AttemptRecord } from "../../../records/attemptRecord";
import type { ControlChart } from "../../../statistics/controlChart";
import { countText } from "../../../wording/amountWords";
import { fineText, roomyDomain, unsignedText } from "../../parts/numbers";
import { type FigureModel, type RunLine, untoldFigure } from "../../pictures/charts/figureModel";

/** Words for each measure; the unit is added. */
export const MEASURE_WORDS: Readonly<Record<ProgressMeasure, string>> = {
  time: "time of an opening",
  "worst-stop": "worst stop of an attempt",
  bias: "mean stop error of an attempt",
};

/** Every measure, the first one shown first. */
export const MEASURES: readonly ProgressMeasure[] = ["worst-stop", "bias", "time"];

/** Rows that a table shows at most: the latest. */
export const MOST_ROWS = 200;

/** "worst stop of an attempt, graduations" */
export const measureAxis = (measure: ProgressMeasure) => `${MEASURE_WORDS[measure]}, ${MEASURE_UNITS[measure]}`;

/** A value of a measure, with a sign where it has one. */
export function measureText(measure: ProgressMeasure, value: number): string {
  if (measure === "bias") return fineText(value);
  return unsignedText(value, measure === "time" ? 1 : 2);
}

const level = (points: readonly ProgressPoint[], y: number) =>
  [points[0]?.number ?? 1, points.at(-1)?.number ?? 1].map((x) => ({ x, y }));

/** Whether anything can lie below a limit: a size and a time never fall below zero. */
const canFallBelow = (measure: ProgressMeasure, low: number) => measure === "bias" || low > 0;

function linesOf(
  measure: ProgressMeasure,
  points: readonly ProgressPoint[],
  { individuals, ewma, baseline }: ProgressCharts,
): RunLine[] {
  const { center, limits } = individuals;
  const along = (look: RunLine["look"], y: number, label: string): RunLine => ({
    look,
    points: level(points, y),
    label,
  });
  const averages = (chart: ControlChart): RunLine => ({
    look: "heavy",
    points: chart.points.map((y, i) => ({ x: points[baseline + i]?.number ?? 0, y })),
  });
  return [
    along("center", center, "usual"),
    ...(canFallBelow(measure, limits.low) ? [along("limit", limits.low, "limit")] : []),
    along("limit", limits.high, "limit"),
    ...(ewma === null ? [] : [averages(ewma)]),
  ];
}

/** Where the running average stays while nothing but chance acts on it. */
function bandOf(
  measure: ProgressMeasure,
  points: readonly ProgressPoint[],
  { limits }: ControlChart,
  baseline: number,
) {
  const low = canFallBelow(measure, limits.low) ? limits.low : 0;
  return points.slice(baseline).map(({ number: x }) => ({ x, low, high: limits.high }));
}

function captionOf(measure: ProgressMeasure, { limits }: ControlChart): string {
  const high = measureText(measure, limits.high);
  if (!canFallBelow(measure, limits.low)) return `${measureAxis(measure)}; limit ${high}`;
  return `${measureAxis(measure)}; limits ${measureText(measure, limits.low)} to ${high}`;
}

function sentenceOf(measure: ProgressMeasure, { individuals, ewma, baseline }: ProgressCharts): string {
  const beyond = individuals.beyond.length;
  const usual = `Usual for you (first ${baseline} attempts): ${measureText(measure, individuals.center)} ${MEASURE_UNITS[measure]}.`;
  const single =
    beyond === 0 ? "No attempt stands out." : `${countText(beyond, "attempt stands", "attempts stand")} out.`;
  if (ewma === null) return `${usual} ${single}`;
  const drift = ewma.beyond.at(-1) === ewma.points.length - 1;
  return `${usual} ${single} Your latest attempts are ${drift ? "no longer as usual" : "as usual"}.`;
}

/** Whether attempts stay within what is usual for one hand: individuals, and their running average. */
export function controlFigure(attempts: readonly AttemptRecord[], measure: ProgressMeasure): FigureModel {
  const title = "What is usual for you";
  const points = progressPoints(attempts, measure);
  const charts = progressCharts(points);
  if (charts === null) return untoldFigure(title, `Needs ${countText(2 - points.length, "more attempt")}.`);
  const { individuals, ewma, baseline } = charts;
  const beyond = new Set(individuals.beyond);
  const lines = linesOf(measure, points, charts);
  const heights = [...points.map(({ value }) => value), ...lines.flatMap((line) => line.points.map(({ y }) => y))];
  return {
    title,
    sentence: sentenceOf(measure, charts),
    chart: {
      kind: "run",
      x: {
        isCount: true,
        label: ewma === null ? "attempt" : "attempt; line: running average, shaded: its limits",
        domain: { low: points[0]?.number ?? 1, high: points.at(-1)?.number ?? 2 },
      },
      y: { label: measureAxis(measure), domain: roomyDomain(heights, 0.5) },
      dots: points.map(({ number: x, value: y }, i) => ({ x, y, isMarked: beyond.has(i) })),
      lines,
      band: ewma === null ? [] : bandOf(measure, points, ewma, baseline),
    },
    table: {
      caption: captionOf(measure, individuals),
      head: ["attempt", "value", "running average", "beyond the limits"],
      rows: points
        .map(({ number, value }, i) => [
          `${number}`,
          measureText(measure, value),
          i < baseline || ewma === null ? "–" : measureText(measure, ewma.points[i - baseline] ?? 0),
          beyond.has(i) ? "yes" : "no",
        ])
        .slice(-MOST_ROWS),
    },
    note: "A control chart of single values: its limits come from how much one attempt differs from the next (moving range) among the first attempts. The heavy line is a running average (EWMA) with limits of its own.",
  };
}
