import { least } from "d3-array";
import type { ChartPoint, Pass } from "./turnPath";

/** From the chart's own measures to pixels. */
export interface Scales {
  readonly xOf: (reading: number) => number;
  readonly yOf: (turns: number) => number;
}

/** A point on the screen, pixels. */
export interface Pixel {
  readonly x: number;
  readonly y: number;
}

/** A point of the path near the pointer, and its distance from it, pixels. */
type NearPoint = ChartPoint & { readonly distance: number };

/** Distance beyond which the pointer is on no point of the path, pixels. */
const REACH = 40;

function nearestOnPass({ from, to }: Pass, { x, y }: Pixel, { xOf, yOf }: Scales): NearPoint {
  const [x0, y0] = [xOf(from.reading), yOf(from.turns)];
  const [dx, dy] = [xOf(to.reading) - x0, yOf(to.turns) - y0];
  const square = dx * dx + dy * dy;
  const part = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / square));
  return {
    reading: from.reading + part * (to.reading - from.reading),
    turns: from.turns + part * (to.turns - from.turns),
    distance: Math.hypot(x0 + part * dx - x, y0 + part * dy - y),
  };
}

/** The point of the path nearest to the pointer, or undefined where the pointer is far from it. */
export function pointUnder(passes: readonly Pass[], pointer: Pixel, scales: Scales): NearPoint | undefined {
  const near = least(
    passes.map((pass) => nearestOnPass(pass, pointer, scales)),
    ({ distance }) => distance,
  );
  return near !== undefined && near.distance <= REACH ? near : undefined;
}
