import type { GrayImage } from "../../image/grayImage";
import type { Similarity } from "../camera/similarity";
import { type DialPose, seenOfFace } from "../pose/dialPose";
import { AROUND } from "../pose/ring";

/** Rings of the face that a strip has, from numbers to marks, and the radii of the first and the last. */
export const ROWS = 14;
const INNERMOST = 0.62;
const OUTERMOST = 0.98;
/** Cells of a strip: `ROWS` rings of `AROUND` points each. */
export const CELLS = ROWS * AROUND;

/** Radius of a row, in radii of the dial. */
export const radiusOf = (row: number): number => INNERMOST + ((OUTERMOST - INNERMOST) * row) / (ROWS - 1);

/** Light for each gray, 0 to 1: cameras code it by about this power. */
const LIGHT = Float32Array.from({ length: 256 }, (_, gray) => (gray / 255) ** 2.2);

/** Unrolls the face of a dial: one row for each ring, one column for each direction from the middle. */
export class StripReader {
  private readonly x = new Float32Array(CELLS);
  private readonly y = new Float32Array(CELLS);

  /** @param bent - angles (radians) by which each cell lies farther left than the pose says; none for a pose that is right */
  constructor(pose: DialPose, bent?: Float32Array) {
    for (let cell = 0; cell < CELLS; cell++) {
      const radius = radiusOf(Math.floor(cell / AROUND));
      const angle = (2 * Math.PI * (cell % AROUND)) / AROUND + (bent?.[cell] ?? 0);
      const seen = seenOfFace(pose, radius * Math.cos(angle), radius * Math.sin(angle));
      this.x[cell] = seen.x;
      this.y[cell] = seen.y;
    }
  }

  /**
   * Reads a picture.
   *
   * @param motion - how the picture moved since the pose was found
   * @param strip - is set to the light of each cell, 0 to 1; 0 outside the picture
   */
  read({ width, height, data }: GrayImage, { a, b, x: x0, y: y0 }: Similarity, strip: Float32Array): void {
    for (let cell = 0; cell < CELLS; cell++) {
      const x = a * (this.x[cell] as number) - b * (this.y[cell] as number) + x0;
      const y = b * (this.x[cell] as number) + a * (this.y[cell] as number) + y0;
      if (!(x >= 0 && y >= 0 && x < width - 1 && y < height - 1)) {
        strip[cell] = 0;
        continue;
      }
      const column = x | 0;
      const row = y | 0;
      const at = row * width + column;
      const right = x - column;
      const down = y - row;
      const upper = lightAt(data, at) * (1 - right) + lightAt(data, at + 1) * right;
      const lower = lightAt(data, at + width) * (1 - right) + lightAt(data, at + width + 1) * right;
      strip[cell] = upper * (1 - down) + lower * down;
    }
  }
}

const lightAt = (data: Uint8Array, at: number) => LIGHT[data[at] as number] as number;
