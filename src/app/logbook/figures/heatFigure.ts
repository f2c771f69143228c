import type { AttemptRecord } from "../../../logbook/attemptRecord";
import { heatStrip } from "../../../logbook/heatStrip";
import type { FigureModel } from "./figureModel";
import { fineText, sizeText } from "./numbers";

/** Stretches round the dial. */
const STRETCHES = 10;

/** Where on the dial one stops badly. */
export function heatFigure(attempts: readonly AttemptRecord[], perTurn: number): FigureModel {
  const title = "Round the dial";
  const bins = heatStrip(attempts, perTurn, STRETCHES);
  const met = bins.flatMap((bin) => (bin.badness === null ? [] : [{ ...bin, badness: bin.badness }]));
  const worst = met.toSorted((a, b) => b.badness - a.badness)[0];
  if (worst === undefined) return { title, sentence: "No stop yet.", chart: null, table: null };
  const name = ({ from, to }: { readonly from: number; readonly to: number }) => `${from} to ${to}`;
  const least = Math.min(...met.map(({ badness }) => badness));
  return {
    title,
    sentence:
      met.length === 1
        ? `All stops fall between ${worst.from} and ${worst.to}.`
        : `You stop worst between ${worst.from} and ${worst.to} (off by ${sizeText(worst.badness)} graduations, root mean square), best where it is ${sizeText(least)}. Few stops in a stretch make it jump about.`,
    chart: {
      kind: "heat",
      cells: bins.map(({ from, to, badness, errors }) => ({ from, to, badness, bias: errors?.bias ?? null })),
      axis: "reading of the number, graduations",
      worst: worst.badness,
    },
    table: {
      caption: "Stop errors by where the number lies, graduations",
      head: ["readings", "n", "off by (root mean square)", "bias"],
      rows: bins.map((bin) => [
        name(bin),
        `${bin.errors?.count ?? 0}`,
        sizeText(bin.badness),
        fineText(bin.errors?.bias ?? null),
      ]),
    },
  };
}
