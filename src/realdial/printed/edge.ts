/** Where brightness changes along a line, in steps from its first sample, and by how much a step. */
export interface Edge {
  at: number;
  strength: number;
}

/**
 * The strongest rise along a line of samples, to a part of a step: the middle of gravity of the slopes around the steepest.
 *
 * @param samples - brightness at even steps; NaN where there is none
 * @param sign - 1 for from dark to light, -1 for from light to dark
 * @param edge - is set
 * @returns whether there is one inside the line
 */
export function findEdge(samples: Float64Array, count: number, sign: 1 | -1, edge: Edge): boolean {
  const slope = (k: number) => (sign * ((samples[k + 1] as number) - (samples[k - 1] as number))) / 2;
  let best = 0;
  let steepest = 0;
  for (let k = 1; k < count - 1; k++) {
    const here = slope(k);
    if (Number.isNaN(here)) return false;
    if (here > steepest) [best, steepest] = [k, here];
  }
  if (best < 2 || best > count - 3) return false;
  let [sum, moment] = [0, 0];
  for (let k = Math.max(1, best - 2); k <= Math.min(count - 2, best + 2); k++) {
    const here = Math.max(0, slope(k));
    sum += here;
    moment += here * k;
  }
  edge.at = moment / sum;
  edge.strength = steepest;
  return true;
}
