import type { Homography, Point } from "../../numerics/homography";

/**
 * Where the face of a dial lies in a picture.
 *
 * A point of the face, in radii of the dial from its middle (x right and y up as the dial is seen upright), is seen at
 * middle + A v / (1 + g · v).
 */
export interface DialPose {
  readonly middle: Point;
  /** A, row by row, pixels a radius. */
  readonly shape: readonly [number, number, number, number];
  /** g: how much nearer the face comes to the camera along x and y. */
  readonly lean: readonly [number, number];
}

/** Where a point of the face is seen. */
export function seenOfFace({ middle, shape, lean }: DialPose, x: number, y: number): Point {
  const w = 1 + lean[0] * x + lean[1] * y;
  return {
    x: middle.x + (shape[0] * x + shape[1] * y) / w,
    y: middle.y + (shape[2] * x + shape[3] * y) / w,
  };
}

/** The same as a map of planes. */
export function homographyOf({ middle, shape, lean }: DialPose): Homography {
  return Float64Array.of(
    shape[0] + middle.x * lean[0],
    shape[1] + middle.x * lean[1],
    middle.x,
    shape[2] + middle.y * lean[0],
    shape[3] + middle.y * lean[1],
    middle.y,
    lean[0],
    lean[1],
    1,
  );
}

/** Pixels a radius, on the mean. */
export const sizeOf = ({ shape }: DialPose): number => Math.sqrt(Math.abs(shape[0] * shape[3] - shape[1] * shape[2]));

/** What a coarse search varies: five numbers. */
export interface CoarsePose {
  readonly middle: Point;
  /** Sine of the tilt, toward the side from which the camera looks: x right, y up. */
  readonly tilt: readonly [number, number];
  /** Pixels a radius. */
  readonly size: number;
}

/**
 * The pose of a dial seen from a tilted camera.
 *
 * @param focal - guess of the focal length, pixels: it only bends the ring a little, and is corrected later
 */
export function poseOf({ middle, tilt, size }: CoarsePose, focal: number): DialPose {
  const sine = Math.min(0.95, Math.hypot(tilt[0], tilt[1]));
  const short = 1 - Math.sqrt(1 - sine * sine);
  const [x, y] = sine < 1e-9 ? [0, 0] : [tilt[0] / sine, tilt[1] / sine];
  const near = size / focal;
  return {
    middle,
    // Rows of the picture run down: the second row has the other sign.
    shape: [size * (1 - short * x * x), -size * short * x * y, size * short * x * y, -size * (1 - short * y * y)],
    lean: [-near * tilt[0], -near * tilt[1]],
  };
}
