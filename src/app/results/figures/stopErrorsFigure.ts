import { ordinalWord } from "../../../dialing/words";
import { type StopErrors, stopTable } from "../../../progress/stops/stopTable";
import { FARTHEST_STOP } from "../../../progress/stops/worstStop";
import type { AttemptRecord } from "../../../records/attemptRecord";
import { agreeing, countText } from "../../../wording/amountWords";
import { fineText, rangeText, roomyDomain, unsignedText } from "../../parts/numbers";
import { signedText } from "../../parts/signedText";
import { type FigureModel, type IntervalRow, untoldFigure } from "../../pictures/charts/figureModel";

interface Named {
  readonly label: string;
  readonly errors: StopErrors;
}

function named(attempts: readonly AttemptRecord[]) {
  const { all, bySteps, byTurns, leftOut } = stopTable(attempts);
  const rows = [
    { label: "all", errors: all },
    ...bySteps.map((errors, k) => ({ label: `${ordinalWord(k + 1)} number`, errors })),
    { label: "turning left", errors: byTurns.left },
    { label: "turning right", errors: byTurns.right },
  ];
  return { all, leftOut, rows: rows.filter((row): row is Named => row.errors !== null) };
}

const bandOf = ({ bias, spread }: StopErrors) =>
  spread === null ? undefined : { low: bias - spread, high: bias + spread };

/** Few stops leave an interval of any length: the chart ends where one no longer learns from it, graduations. */
const FARTHEST = 4;

const ends = ({ value, interval, band }: IntervalRow) => [
  value,
  ...[interval, band].flatMap((one) => (one ? [Math.max(-FARTHEST, one.low), Math.min(FARTHEST, one.high)] : [])),
];

function sentenceOf({ count, bias, biasInterval, spread }: StopErrors, leftOut: number): string {
  const isShown = biasInterval !== null && (biasInterval.low > 0 || biasInterval.high < 0);
  const tendency = !isShown
    ? `${countText(count, "stop")}: you lean to neither side so far`
    : `${countText(count, "stop")}: you ${bias > 0 ? "run past" : "stop short"} by ${unsignedText(Math.abs(bias))} graduations on average`;
  const width = spread === null ? "" : ` Your stops vary by ${unsignedText(spread)} graduations.`;
  const aside =
    leftOut === 0
      ? ""
      : ` ${countText(leftOut, "stop")} more than ${FARTHEST_STOP} graduations off ${agreeing(leftOut, "is a lost count and is", "are lost counts and are")} left out.`;
  return `${tendency}.${width}${aside}`;
}

/** Bias and spread of the stops, for each number and each direction. */
export function stopErrorsFigure(attempts: readonly AttemptRecord[], tolerance: number): FigureModel {
  const title = "Stop errors";
  const { all, leftOut, rows } = named(attempts);
  if (all === null) return untoldFigure(title, `Needs a stop within ${FARTHEST_STOP} graduations of its number.`);
  const chartRows = rows.map(({ label, errors }) => ({
    label,
    value: errors.bias,
    interval: errors.biasInterval,
    band: bandOf(errors),
  }));
  return {
    title,
    sentence: sentenceOf(all, leftOut),
    chart: {
      kind: "intervals",
      rows: chartRows,
      domain: roomyDomain([-tolerance, tolerance, ...chartRows.flatMap(ends)], 2),
      axis: "graduations; plus ran past. Diamond: average, bar: how stops vary",
      good: { low: -tolerance, high: tolerance },
      // A domain at least 2 wide has ticks at halves or more.
      tickText: (value) => signedText(value),
    },
    table: {
      caption: "Stop errors in graduations along the turn; plus ran past",
      head: ["stops", "count", "average", "average lies in", "vary by"],
      rows: rows.map(({ label, errors }) => [
        label,
        `${errors.count}`,
        fineText(errors.bias),
        rangeText(errors.biasInterval, fineText),
        unsignedText(errors.spread),
      ]),
    },
    note: "Average: mean stop error (bias), with its Student t interval at 95 % confidence. Vary by: standard deviation. You lean to a side only where the interval leaves out 0.",
  };
}
