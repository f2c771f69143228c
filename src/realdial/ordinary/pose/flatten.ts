import type { GrayImage } from "../../image/grayImage";
import { Fourier } from "../../numerics/fourier";
import { LeastSquares } from "../../numerics/leastSquares";
import type { DialPose } from "./dialPose";
import { AROUND, cosineAt, readRing, sineAt } from "./ring";

/** What the marks around a ring say. */
export interface CombPhase {
  /** Marks counted once around. */
  readonly count: number;
  /** Graduations from the first point of the ring to each, by the marks. */
  readonly graduations: Float64Array;
  /** How strong the marks are at each point, gray levels. */
  readonly strength: Float64Array;
}

const transform = new Fourier(AROUND);

/**
 * The phase of marks around a ring: the ring is filtered to pitches near the right one, and what is left is a turning
 * arrow, whose angle is counted through (the analytic signal: D. Gabor 1946).
 */
export function combPhase(ring: Float64Array, graduations: number): CombPhase {
  const real = Float64Array.from(ring);
  const imaginary = new Float64Array(AROUND);
  transform.forward(real, imaginary);
  for (let k = 0; k < AROUND; k++) {
    const off = Math.abs(k / graduations - 1) / 0.45;
    const pass = off >= 1 ? 0 : 2 * Math.cos((Math.PI / 2) * off) ** 2;
    real[k] = (real[k] as number) * pass;
    imaginary[k] = (imaginary[k] as number) * pass;
  }
  transform.backward(real, imaginary);
  const turned = new Float64Array(AROUND);
  const strength = new Float64Array(AROUND);
  let angle = 0;
  let before = Math.atan2(imaginary[0] as number, real[0] as number);
  const first = before;
  for (let i = 0; i < AROUND; i++) {
    const now = Math.atan2(imaginary[i] as number, real[i] as number);
    angle += wrapped(now - before);
    before = now;
    turned[i] = angle / (2 * Math.PI);
    strength[i] = Math.hypot(real[i] as number, imaginary[i] as number);
  }
  return { count: (angle + wrapped(first - before)) / (2 * Math.PI), graduations: turned, strength };
}

const wrapped = (angle: number) => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

/** How unevenly the marks lie in a pose, graduations (root mean square, weighed by their strength). */
export interface Flattened {
  readonly pose: DialPose;
  readonly uneven: number;
  readonly count: number;
}

/** Moves a pose so that the marks lie evenly around the ring; perspective along the radius stays as it was. */
export function flattened(image: GrayImage, from: DialPose, graduations: number, radii: readonly number[]): Flattened {
  const ring = new Float64Array(AROUND);
  let pose = from;
  let best: Flattened = { pose, uneven: Number.POSITIVE_INFINITY, count: 0 };
  for (let step = 0; step < 8; step++) {
    if (!readRing(image, pose, radii, ring)) break;
    const comb = combPhase(ring, graduations);
    const uneven = unevenness(comb, graduations);
    if (uneven < best.uneven) best = { pose, uneven, count: comb.count };
    if (step > 0 && uneven > best.uneven) break;
    const next = evened(pose, comb, graduations);
    if (next === null) break;
    pose = next;
  }
  return best;
}

function unevenness({ graduations: at, strength }: CombPhase, graduations: number): number {
  let [sum, squares, weights] = [0, 0, 0];
  for (let i = 0; i < AROUND; i++) {
    const off = (at[i] as number) - (graduations * i) / AROUND;
    const weight = strength[i] as number;
    sum += weight * off;
    squares += weight * off * off;
    weights += weight;
  }
  return Math.sqrt(Math.max(0, squares / weights - (sum / weights) ** 2));
}

/**
 * One step: seen from its middle, each point of the ring should lie in the direction that the marks give it. For a small
 * change of the face's axes, v goes to B v + b, that is linear in B and b.
 */
function evened(pose: DialPose, comb: CombPhase, graduations: number): DialPose | null {
  const equations = new LeastSquares(5);
  for (let i = 0; i < AROUND; i += 2) {
    const angle = (2 * Math.PI * (comb.graduations[i] as number)) / graduations;
    const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
    const [x, y] = [cosineAt(i), sineAt(i)];
    // dx (y + B y) - dy (x + B x) = 0, where B = [[a, b], [b, -a]] and a turn of the whole is free.
    const slopes = [-dy * x - dx * y, dx * x - dy * y, -dy, dx, dx * x + dy * y];
    equations.add(slopes, dy * x - dx * y, comb.strength[i] as number);
  }
  const found = new Float64Array(5);
  if (!equations.solveInto(found, 1e-9)) return null;
  return movedBy(pose, found);
}

/** The pose in which what lay at v lies at v + B v + b. */
function movedBy({ middle, shape, lean }: DialPose, found: Float64Array): DialPose {
  const [a = 0, b = 0, x = 0, y = 0] = found;
  // The way back, for small changes: v' - B v' - b.
  const [s0, s1, s2, s3] = shape;
  const inverse = 1 / ((1 + a) * (1 - a) - b * b);
  const [i0, i1, i2, i3] = [(1 - a) * inverse, -b * inverse, -b * inverse, (1 + a) * inverse];
  const [fx, fy] = [-(i0 * x + i1 * y), -(i2 * x + i3 * y)];
  return {
    middle: { x: middle.x + s0 * fx + s1 * fy, y: middle.y + s2 * fx + s3 * fy },
    shape: [s0 * i0 + s1 * i2, s0 * i1 + s1 * i3, s2 * i0 + s3 * i2, s2 * i1 + s3 * i3],
    lean,
  };
}
