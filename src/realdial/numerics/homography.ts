import { LeastSquares } from "./leastSquares";

/** A point of a plane or a picture. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * A perspective map from plane to plane, 3 × 3 row by row: (x, y) goes to
 * ((h0 x + h1 y + h2) / w, (h3 x + h4 y + h5) / w), w = h6 x + h7 y + h8.
 */
export type Homography = Float64Array;

/** Where a perspective map takes a point. */
export function mapped(h: Homography, x: number, y: number): Point {
  const w = (h[6] as number) * x + (h[7] as number) * y + (h[8] as number);
  return {
    x: ((h[0] as number) * x + (h[1] as number) * y + (h[2] as number)) / w,
    y: ((h[3] as number) * x + (h[4] as number) * y + (h[5] as number)) / w,
  };
}

/** First `second`, then `first`, as one map. */
export function product(first: Homography, second: Homography): Homography {
  const result = new Float64Array(9);
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) {
      let sum = 0;
      for (let k = 0; k < 3; k++) sum += (first[3 * row + k] as number) * (second[3 * k + column] as number);
      result[3 * row + column] = sum;
    }
  }
  return result;
}

/** The map back, by its adjugate: right up to scale, which does not matter. */
export function inverse(h: Homography): Homography {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, i = 0, k = 0] = h;
  return Float64Array.of(
    e * k - f * i,
    c * i - b * k,
    b * f - c * e,
    f * g - d * k,
    a * k - c * g,
    c * d - a * f,
    d * i - e * g,
    b * g - a * i,
    a * e - b * d,
  );
}

/**
 * The perspective map that takes points to points: exact for four, by least squares for more, with both sets moved to
 * mean 0 and size 1 first (R. Hartley, In defense of the eight-point algorithm, 1997).
 *
 * @returns null where the points do not determine one, as when three of four lie on a line
 */
export function homographyThrough(from: readonly Point[], to: readonly Point[]): Homography | null {
  const here = normalizing(from);
  const there = normalizing(to);
  const equations = new LeastSquares(8);
  for (let k = 0; k < from.length; k++) {
    const { x, y } = mapped(here, (from[k] as Point).x, (from[k] as Point).y);
    const { x: u, y: v } = mapped(there, (to[k] as Point).x, (to[k] as Point).y);
    equations.add([x, y, 1, 0, 0, 0, -u * x, -u * y], u);
    equations.add([0, 0, 0, x, y, 1, -v * x, -v * y], v);
  }
  const solution = new Float64Array(8);
  if (!equations.solveInto(solution)) return null;
  return product(inverse(there), product(Float64Array.of(...solution, 1), here));
}

/** The map that takes points to mean 0 and mean distance 1 from it. */
function normalizing(points: readonly Point[]): Homography {
  const n = points.length;
  const x = points.reduce((sum, point) => sum + point.x, 0) / n;
  const y = points.reduce((sum, point) => sum + point.y, 0) / n;
  const distance = points.reduce((sum, point) => sum + Math.hypot(point.x - x, point.y - y), 0) / n || 1;
  return Float64Array.of(1 / distance, 0, -x / distance, 0, 1 / distance, -y / distance, 0, 0, 1);
}
