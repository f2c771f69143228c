import { type EstimateCalibration, estimateCalibration, judgedStops } from "../../../progress/stops/stopEstimates";
import type { AttemptRecord } from "../../../records/attemptRecord";
import { countText } from "../../../wording/amountWords";
import { fineText, rangeText, roomyDomain, unsignedText } from "../../parts/numbers";
import { type FigureModel, untoldFigure } from "../../pictures/charts/figureModel";

/** Latest estimates in the table. */
const IN_TABLE = 20;

/** Correlation from which estimates follow the stops well; a training value. */
const FOLLOWS = 0.5;

const feelWords = (correlation: number) =>
  correlation >= FOLLOWS ? "You feel which attempts were worse." : "You do not yet feel which attempts were worse.";

function sentenceOf({ count, bias, biasInterval, spread, correlation }: EstimateCalibration): string {
  const isShown = biasInterval.low > 0 || biasInterval.high < 0;
  const lean = isShown
    ? `you ${bias < 0 ? "underestimate" : "overestimate"} your stop error by ${unsignedText(Math.abs(bias))} graduations on average`
    : "you lean to neither side so far";
  const feel = correlation === null ? "" : ` ${feelWords(correlation)}`;
  return `${countText(count, "estimate")}: ${lean}. Your estimates vary by ${unsignedText(spread)} graduations.${feel}`;
}

/** Own estimates of the worst stop beside the truth: how well the hand is felt. */
export function estimateFigure(attempts: readonly AttemptRecord[]): FigureModel {
  const title = "Own estimates";
  const judged = judgedStops(attempts);
  const found = estimateCalibration(judged);
  if (found === null) {
    const more = countText(2 - judged.length, "more estimate");
    return untoldFigure(
      title,
      `Needs ${more}. On the bench, under More, choose to estimate before the result is shown.`,
    );
  }
  const most = roomyDomain([0, ...judged.flatMap(({ said, was }) => [said, was])], 1).high;
  const domain = { low: 0, high: most };
  return {
    title,
    sentence: sentenceOf(found),
    chart: {
      kind: "run",
      x: { label: "the worst stop was off by, graduations", domain, isCount: false },
      y: { label: "you said, graduations", domain },
      dots: judged.map(({ said, was }) => ({ x: was, y: said, isMarked: false })),
      lines: [
        {
          look: "limit",
          points: [
            { x: 0, y: 0 },
            { x: most, y: most },
          ],
          label: "as it was",
        },
      ],
      band: [],
    },
    table: {
      caption: "Own estimates of the worst stop, graduations",
      head: ["attempt", "said", "was", "difference"],
      rows: judged
        .slice(-IN_TABLE)
        .map(({ number, said, was }) => [`${number}`, unsignedText(said), unsignedText(was), fineText(said - was)]),
    },
    note: `Average difference of estimate and truth: ${rangeText(found.biasInterval, fineText)} graduations (Student t, 95 % confidence)${found.correlation === null ? "" : `; correlation with the truth ${fineText(found.correlation)}`}. Vary by: standard deviation.`,
  };
}
