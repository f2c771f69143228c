import type { GrayImage } from "./grayImage";

/** How brightness rises to the right (`x`) and downward (`y`), in levels a pixel. */
export interface Gradient {
  x: number;
  y: number;
}

/**
 * Brightness and its gradient at a point, of the bilinear surface smoothed by one pixel each way: central differences.
 *
 * @param gradient - is set
 * @returns the brightness; NaN, and the gradient as it was, within a pixel of the picture's edge or outside
 */
export function gradientAt(image: GrayImage, px: number, py: number, gradient: Gradient): number {
  const { width, height, data } = image;
  if (!(px >= 1 && py >= 1 && px < width - 2 && py < height - 2)) return Number.NaN;
  const column = px | 0;
  const row = py | 0;
  const right = px - column;
  const down = py - row;
  const a = (1 - right) * (1 - down);
  const b = right * (1 - down);
  const c = (1 - right) * down;
  const d = right * down;
  const at = row * width + column;
  const level = (offset: number) =>
    a * (data[at + offset] as number) +
    b * (data[at + offset + 1] as number) +
    c * (data[at + offset + width] as number) +
    d * (data[at + offset + width + 1] as number);
  gradient.x = (level(1) - level(-1)) / 2;
  gradient.y = (level(width) - level(-width)) / 2;
  return level(0);
}
