import { type HeatBin, heatStrip } from "../../../progress/stops/heatStrip";
import { FARTHEST_STOP } from "../../../progress/stops/worstStop";
import type { AttemptRecord } from "../../../records/attemptRecord";
import { fineText, unsignedText } from "../../parts/numbers";
import { type FigureModel, untoldFigure } from "../../pictures/charts/figureModel";

/** A stretch where there was a stop. */
type MetBin = HeatBin & { readonly badness: number };

/** Stretches round the dial. */
const STRETCHES = 10;

function sentenceOf({ from, to, badness }: MetBin, least: number, count: number): string {
  if (count === 1) return `All stops fall between ${from} and ${to}.`;
  const [worst, best] = [unsignedText(badness), unsignedText(least)];
  if (worst === best) return `Your stops are equally far off everywhere: ${worst} graduations.`;
  return `Your stops are farthest off between ${from} and ${to}: ${worst} graduations. Where you stop best it is ${best}. With few stops in a stretch, its figure jumps about.`;
}

/** Where on the dial one stops badly. */
export function heatFigure(attempts: readonly AttemptRecord[], perTurn: number): FigureModel {
  const title = "Round the dial";
  const bins = heatStrip(attempts, perTurn, STRETCHES);
  const met = bins.flatMap((bin) => (bin.badness === null ? [] : [{ ...bin, badness: bin.badness }]));
  const worst = met.toSorted((a, b) => b.badness - a.badness)[0];
  if (worst === undefined)
    return untoldFigure(title, `Needs a stop within ${FARTHEST_STOP} graduations of its number.`);
  const name = ({ from, to }: { readonly from: number; readonly to: number }) => `${from} to ${to}`;
  const least = Math.min(...met.map(({ badness }) => badness));
  return {
    title,
    sentence: sentenceOf(worst, least, met.length),
    chart: {
      kind: "heat",
      cells: bins.map(({ from, to, badness, errors }) => ({ from, to, badness, bias: errors?.bias ?? null })),
      axis: "reading of the number, graduations",
      worst: worst.badness,
    },
    table: {
      caption: "Stop errors by where the number lies, graduations",
      head: ["readings", "count", "off by", "average"],
      rows: bins.map((bin) => [
        name(bin),
        `${bin.errors?.count ?? 0}`,
        unsignedText(bin.badness),
        fineText(bin.errors?.bias ?? null),
      ]),
    },
    note: "Off by: root mean square of the stop errors in a tenth of the dial. Average: their mean; plus ran past.",
  };
}
