import type { Homography } from "../numerics/homography";

/** A point that is set again and again. */
export interface MovingPoint {
  x: number;
  y: number;
}

/**
 * How the plane of the base sheet (mm) lies in the picture (pixels): a perspective map, then a lens that moves a point
 * away from the picture's middle by the factor 1 + lens · r², r in half widths of the picture (the first term of
 * D. Brown, Close-range camera calibration, 1971; negative for a barrel).
 */
export interface View {
  /** From the plane to pixels from the picture's middle. */
  readonly h: Homography;
  readonly lens: number;
  readonly middle: { readonly x: number; readonly y: number };
}

/** Puts a point of the base's plane into the picture. @param point - is set */
export function project({ h, lens, middle }: View, x: number, y: number, point: MovingPoint): void {
  const w = (h[6] as number) * x + (h[7] as number) * y + (h[8] as number);
  const px = ((h[0] as number) * x + (h[1] as number) * y + (h[2] as number)) / w;
  const py = ((h[3] as number) * x + (h[4] as number) * y + (h[5] as number)) / w;
  const factor = 1 + (lens * (px * px + py * py)) / (middle.x * middle.x);
  point.x = middle.x + px * factor;
  point.y = middle.y + py * factor;
}

/** Pixels to a mm near a point of the plane, the mean of both directions. */
export function pixelsPerMm(view: View, x: number, y: number): number {
  const [left, right, up, down] = [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ] as const;
  project(view, x - 1, y, left);
  project(view, x + 1, y, right);
  project(view, x, y - 1, up);
  project(view, x, y + 1, down);
  const area = (right.x - left.x) * (down.y - up.y) - (right.y - left.y) * (down.x - up.x);
  return Math.sqrt(Math.abs(area)) / 2;
}

/**
 * Where a point of the plane seems to go when it is raised by 1 mm: away from the spot below the camera, at the middle of
 * the sheet. Its direction is good even where its length is not.
 */
export function shiftOfHeight({ h, middle }: View): MovingPoint {
  const focal = focalLength(h, 2 * middle.x);
  const column = (k: number): Vector => {
    const sign = Math.sign(h[8] as number);
    return [(sign * (h[k] as number)) / focal, (sign * (h[k + 3] as number)) / focal, sign * (h[k + 6] as number)];
  };
  const [right, down, to] = [column(0), column(1), column(2)];
  const scale = (Math.hypot(...right) + Math.hypot(...down)) / 2;
  const away = dot(cross(right, down), to) / scale;
  return { x: dot(right, to) / away, y: dot(down, to) / away };
}

/**
 * Focal length in pixels of a camera with square pixels and its axis in the picture's middle, from the map of a plane:
 * the images of both axes are of one length and upright on each other (Z. Zhang, A flexible new technique for camera
 * calibration, 2000). A plane seen from straight above does not show it: then it is near 0.9 widths.
 */
function focalLength(h: Homography, width: number): number {
  const [a = 0, b = 0, , d = 0, e = 0, , g = 0, i = 0] = h;
  const upright = a * b + d * e;
  const alike = (a * a + d * d - b * b - e * e) / 2;
  const usual = (0.9 * width) ** -2;
  const trust = 0.02 * (a * a + d * d + b * b + e * e) ** 2;
  const found = (trust * usual - upright * g * i - (alike * (g * g - i * i)) / 2) / (upright ** 2 + alike ** 2 + trust);
  return 1 / Math.sqrt(Math.min(4 * usual, Math.max(usual / 6, found)));
}

type Vector = readonly [number, number, number];

const dot = (one: Vector, other: Vector) => one[0] * other[0] + one[1] * other[1] + one[2] * other[2];

const cross = ([a, b, c]: Vector, [x, y, z]: Vector): Vector => [b * z - c * y, c * x - a * z, a * y - b * x];
