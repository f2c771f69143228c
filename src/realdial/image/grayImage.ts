/**
 * A gray picture. The center of the upper left pixel is the point (0, 0), x runs right and y down.
 * Row-major; 0 is black, 255 white.
 */
export interface GrayImage {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** Whether a point lies so far inside a picture that it has four pixels around it. */
export function isInside(image: GrayImage, x: number, y: number): boolean {
  return x >= 0 && y >= 0 && x < image.width - 1 && y < image.height - 1;
}

/** Brightness at a point between pixels, bilinear; NaN outside the picture. */
export function sampleAt(image: GrayImage, x: number, y: number): number {
  const { width, data } = image;
  if (!isInside(image, x, y)) return Number.NaN;
  const column = x | 0;
  const row = y | 0;
  const right = x - column;
  const down = y - row;
  const at = row * width + column;
  const upper = (data[at] as number) * (1 - right) + (data[at + 1] as number) * right;
  const lower = (data[at + width] as number) * (1 - right) + (data[at + width + 1] as number) * right;
  return upper * (1 - down) + lower * down;
}

/** Pictures darker than this on the whole show nothing, levels of 255. */
const DARKEST = 25;

/** Whether a picture is so dark on the whole that it shows nothing. */
export function isTooDark({ data }: GrayImage): boolean {
  const brightness = data.reduce((sum, level) => sum + level, 0) / data.length;
  return !(brightness >= DARKEST);
}
