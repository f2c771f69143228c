import type { ChartPoint, Pass } from "./turnPath";

/** From the chart's own measures to pixels. */
export interface Scales {
  readonly xOf: (reading: number) => number;
  readonly yOf: (turns: number) => number;
}

/** A point of the path near the pointer. */
export interface NearPoint extends ChartPoint {
  /** Distance from the pointer, pixels. */
  readonly distance: number;
}

function nearestOnPass(pass: Pass, x: number, y: number, { xOf, yOf }: Scales): NearPoint {
  const [x0, y0] = [xOf(pass.from.reading), yOf(pass.from.turns)];
  const [dx, dy] = [xOf(pass.to.reading) - x0, yOf(pass.to.turns) - y0];
  const square = dx * dx + dy * dy;
  const part = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - x0) * dx + (y - y0) * dy) / square));
  return {
    reading: pass.from.reading + part * (pass.to.reading - pass.from.reading),
    turns: pass.from.turns + part * (pass.to.turns - pass.from.turns),
    distance: Math.hypot(x0 + part * dx - x, y0 + part * dy - y),
  };
}

/**
 * The point of a path nearest to the pointer on the screen.
 *
 * @param x - pixels
 * @param y - pixels
 * @returns null for no path
 */
export function nearestPoint(passes: readonly Pass[], x: number, y: number, scales: Scales): NearPoint | null {
  let best: NearPoint | null = null;
  for (const pass of passes) {
    const near = nearestOnPass(pass, x, y, scales);
    if (best === null || near.distance < best.distance) best = near;
  }
  return best;
}
