import type { GrayImage } from "../../image/grayImage";
import { sampleAt } from "../../image/grayImage";
import type { DialPose } from "./dialPose";

/** Points around a ring that is looked at. */
export const AROUND = 1024;

const COSINES = Float64Array.from({ length: AROUND }, (_, i) => Math.cos((2 * Math.PI * i) / AROUND));
const SINES = Float64Array.from({ length: AROUND }, (_, i) => Math.sin((2 * Math.PI * i) / AROUND));

/** Cosine and sine of the angle of a point of a ring, counted left from the right-hand side. */
export const cosineAt = (i: number): number => COSINES[i & (AROUND - 1)] as number;
/** See `cosineAt`. */
export const sineAt = (i: number): number => SINES[i & (AROUND - 1)] as number;

/**
 * Brightness along a ring of the face, the mean over some radii.
 *
 * @param radii - in radii of the dial
 * @param ring - is set, `AROUND` values; each `every`-th is taken
 * @returns whether all of it is in the picture
 */
export function readRing(
  image: GrayImage,
  { middle, shape, lean }: DialPose,
  radii: readonly number[],
  ring: Float64Array,
): boolean {
  ring.fill(0);
  for (const radius of radii) {
    for (let i = 0; i < AROUND; i++) {
      const x = radius * (COSINES[i] as number);
      const y = radius * (SINES[i] as number);
      const w = 1 + lean[0] * x + lean[1] * y;
      const level = sampleAt(
        image,
        middle.x + (shape[0] * x + shape[1] * y) / w,
        middle.y + (shape[2] * x + shape[3] * y) / w,
      );
      ring[i] = (ring[i] as number) + level;
    }
  }
  for (let i = 0; i < AROUND; i++) ring[i] = (ring[i] as number) / radii.length;
  return !ring.some(Number.isNaN);
}
