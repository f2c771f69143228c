import type { AttemptRecord } from "../../../logbook/attemptRecord";
import { type EstimateCalibration, estimateCalibration, judgedStops } from "../../../logbook/stopEstimates";
import { type FigureModel, untoldFigure } from "./figureModel";
import { countText, fineText, rangeText, roomyDomain, sizeText } from "./numbers";

/** Latest estimates in the table. */
const IN_TABLE = 20;

function sentenceOf({ count, bias, biasInterval, spread, correlation }: EstimateCalibration): string {
  const isShown = biasInterval.low > 0 || biasInterval.high < 0;
  const lean = isShown
    ? `You take your stops for ${bias < 0 ? "better" : "worse"} than they are by ${sizeText(Math.abs(bias))} graduations`
    : "No lean to either side is shown yet";
  const feel = correlation === null ? "" : `; correlation with the truth ${fineText(correlation)}`;
  return `${lean}, and your estimates scatter by ${sizeText(spread)}${feel} (${countText(count, "estimate")}).`;
}

/** Own estimates of the worst stop beside the truth: how well the hand is felt. */
export function estimateFigure(attempts: readonly AttemptRecord[]): FigureModel {
  const title = "Own estimates";
  const judged = judgedStops(attempts);
  const found = estimateCalibration(judged);
  if (found === null) {
    const more = countText(2 - judged.length, "more estimate");
    return untoldFigure(title, `Needs ${more}: at the bench, under More, ask to be asked before a result is shown.`);
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
      caption: `Own estimates of the worst stop, graduations; bias ${rangeText(found.biasInterval, fineText)} (95 %)`,
      head: ["attempt", "said", "was", "said less was"],
      rows: judged
        .slice(-IN_TABLE)
        .map(({ number, said, was }) => [`${number}`, sizeText(said), sizeText(was), fineText(said - was)]),
    },
  };
}
