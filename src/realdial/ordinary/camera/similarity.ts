import type { Point } from "../../numerics/homography";

/** How a picture moved since set-up: (x, y) goes to (a x - b y + x0, b x + a y + y0). */
export interface Similarity {
  readonly a: number;
  readonly b: number;
  readonly x: number;
  readonly y: number;
}

/** A camera that has not moved. */
export const UNMOVED: Similarity = { a: 1, b: 0, x: 0, y: 0 };

/** Where a point of the picture at set-up is seen now. */
export const movedPoint = ({ a, b, x, y }: Similarity, at: Point): Point => ({
  x: a * at.x - b * at.y + x,
  y: b * at.x + a * at.y + y,
});

/** A similarity through points, and the sum of squares of how far these lie from their middle: what holds its turn. */
interface Fit {
  readonly motion: Similarity;
  readonly spread: number;
}

/**
 * The similarity that takes points to points best, in closed form (S. Umeyama 1991, in the plane).
 *
 * @param weights - one for each pair; 0 leaves it out
 */
export function similarityThrough(
  from: readonly Point[],
  to: readonly Point[],
  weights: readonly number[],
): Fit | null {
  let [sum, fx, fy, tx, ty] = [0, 0, 0, 0, 0];
  weights.forEach((weight, i) => {
    sum += weight;
    fx += weight * (from[i] as Point).x;
    fy += weight * (from[i] as Point).y;
    tx += weight * (to[i] as Point).x;
    ty += weight * (to[i] as Point).y;
  });
  if (sum === 0) return null;
  [fx, fy, tx, ty] = [fx / sum, fy / sum, tx / sum, ty / sum];
  let [along, across, spread] = [0, 0, 0];
  weights.forEach((weight, i) => {
    const [x, y] = [(from[i] as Point).x - fx, (from[i] as Point).y - fy];
    const [u, v] = [(to[i] as Point).x - tx, (to[i] as Point).y - ty];
    along += weight * (x * u + y * v);
    across += weight * (x * v - y * u);
    spread += weight * (x * x + y * y);
  });
  if (spread < 1) return null;
  const [a, b] = [along / spread, across / spread];
  return { motion: { a, b, x: tx - a * fx + b * fy, y: ty - b * fx - a * fy }, spread };
}
