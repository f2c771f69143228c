import { ordinalWord } from "../../../dialing/words";
import { stopThroughput } from "../../../progress/stops/stopThroughput";
import type { AttemptRecord } from "../../../records/attemptRecord";
import { unsignedText } from "../../parts/numbers";
import { type FigureModel, untoldFigure } from "../../pictures/charts/figureModel";

/** Speed and accuracy in one number, for each place in the combination. */
export function throughputFigure(attempts: readonly AttemptRecord[]): FigureModel {
  const title = "Speed and accuracy";
  const rows = stopThroughput(attempts).flatMap((found, k) =>
    found === null ? [] : [{ label: `${ordinalWord(k + 1)} number`, found }],
  );
  if (rows.length === 0) return untoldFigure(title, "Needs two timed stops at one number, not both on one spot.");
  const rates = rows.map(({ found }) => found.throughput_bitsPerSecond);
  const best = rows.reduce((a, b) => (b.found.throughput_bitsPerSecond > a.found.throughput_bitsPerSecond ? b : a));
  return {
    title,
    sentence: `You stop fastest for the accuracy you reach at the ${best.label}: ${unsignedText(best.found.throughput_bitsPerSecond)} bits a second. A higher figure is faster or nearer the mark.`,
    chart: {
      kind: "intervals",
      rows: rows.map(({ label, found }) => ({ label, value: found.throughput_bitsPerSecond, interval: null })),
      domain: { low: 0, high: Math.max(1, ...rates) * 1.08 },
      axis: "bits a second",
    },
    table: {
      caption: "Throughput of the stops",
      head: ["stops", "bits/s", "difficulty, bits", "width, graduations", "mean time, s"],
      rows: rows.map(({ label, found }) => [
        label,
        unsignedText(found.throughput_bitsPerSecond),
        unsignedText(found.effectiveDifficulty_bits),
        unsignedText(found.effectiveWidth),
        unsignedText(found.meanTime_ms / 1000, 1),
      ]),
    },
    note: "Throughput by Fitts’s law with the effective width, 4.133 standard deviations of the stops (ISO 9241-411).",
  };
}
