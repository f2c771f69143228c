import { gradientAt } from "../../image/gradient";
import { type GrayImage, sampleAt } from "../../image/grayImage";
import type { Point } from "../../numerics/homography";
import { movedPoint, type Similarity } from "./similarity";

/** Pixels each way from a patch's middle. */
export const REACH = 6;
const SIDE = 2 * REACH + 1;
const PIXELS = SIDE * SIDE;
const STEPS = 8;
/** Correlation of a patch with what it was, from which it counts as found again. */
const ALIKE = 0.65;
/** A patch is looked for within so many pixels of where it should be. */
const FARTHEST = 5;

/**
 * A small piece of a picture that is found again in later ones: the template's own gradients are used in each step
 * (S. Baker and I. Matthews, Lucas-Kanade 20 years on, 2004: inverse compositional), gain and offset are left free.
 */
export class Patch {
  readonly at: Point;
  /** The smaller eigenvalue of its gradients' products: how well both directions are held. */
  readonly hold: number;
  private readonly levels = new Float64Array(PIXELS);
  private readonly slopesX = new Float64Array(PIXELS);
  private readonly slopesY = new Float64Array(PIXELS);
  private readonly now = new Float64Array(PIXELS);
  private readonly spread: number;
  private readonly inverse: readonly [number, number, number];

  /** @param at - a point of the picture, at least `REACH` + 3 pixels from its edge */
  constructor(image: GrayImage, at: Point) {
    this.at = at;
    const gradient = { x: 0, y: 0 };
    let [xx, xy, yy] = [0, 0, 0];
    for (let i = 0; i < PIXELS; i++) {
      this.levels[i] = gradientAt(image, at.x + (i % SIDE) - REACH, at.y + Math.floor(i / SIDE) - REACH, gradient);
      this.slopesX[i] = gradient.x;
      this.slopesY[i] = gradient.y;
      xx += gradient.x * gradient.x;
      xy += gradient.x * gradient.y;
      yy += gradient.y * gradient.y;
    }
    this.hold = (xx + yy) / 2 - Math.hypot((xx - yy) / 2, xy);
    const determinant = xx * yy - xy * xy;
    this.inverse = [yy / determinant, -xy / determinant, xx / determinant];
    this.spread = standardized(this.levels);
  }

  /**
   * Looks for it again.
   *
   * @param motion - how the picture is thought to have moved since
   * @returns where its middle is; null where it is not found
   */
  find(image: GrayImage, motion: Similarity): Point | null {
    const start = movedPoint(motion, this.at);
    let { x, y } = start;
    for (let step = 0; step < STEPS; step++) {
      if (!this.look(image, motion, x, y)) return null;
      const { dx, dy } = this.step();
      // A step in the template's axes is turned with the picture.
      x -= motion.a * dx - motion.b * dy;
      y -= motion.b * dx + motion.a * dy;
      if (Math.hypot(x - start.x, y - start.y) > FARTHEST) return null;
      if (Math.abs(dx) + Math.abs(dy) < 0.004) break;
    }
    return this.look(image, motion, x, y) && this.likeness() > ALIKE ? { x, y } : null;
  }

  private look(image: GrayImage, { a, b }: Similarity, x: number, y: number): boolean {
    for (let i = 0; i < PIXELS; i++) {
      const u = (i % SIDE) - REACH;
      const v = Math.floor(i / SIDE) - REACH;
      this.now[i] = sampleAt(image, x + a * u - b * v, y + b * u + a * v);
    }
    return standardized(this.now) > 0;
  }

  private step(): { readonly dx: number; readonly dy: number } {
    let [x, y] = [0, 0];
    for (let i = 0; i < PIXELS; i++) {
      const off = ((this.now[i] as number) - (this.levels[i] as number)) * this.spread;
      x += off * (this.slopesX[i] as number);
      y += off * (this.slopesY[i] as number);
    }
    const [xx, xy, yy] = this.inverse;
    return { dx: xx * x + xy * y, dy: xy * x + yy * y };
  }

  private likeness(): number {
    let sum = 0;
    for (let i = 0; i < PIXELS; i++) sum += (this.now[i] as number) * (this.levels[i] as number);
    return sum / PIXELS;
  }
}

/** Brings levels to mean 0 and SD 1. @returns the SD they had; 0 (and nothing done) where it is none to speak of */
function standardized(levels: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < levels.length; i++) sum += levels[i] as number;
  const mean = sum / levels.length;
  let squares = 0;
  for (let i = 0; i < levels.length; i++) squares += ((levels[i] as number) - mean) ** 2;
  const spread = Math.sqrt(squares / levels.length);
  if (!(spread > 1)) return 0;
  for (let i = 0; i < levels.length; i++) levels[i] = ((levels[i] as number) - mean) / spread;
  return spread;
}
