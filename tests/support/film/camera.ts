/** Where a camera is and how it sees. The world's millimeters: x right, y up, z toward the camera; the base lies at z = 0. */
export interface Camera {
  readonly width: number;
  readonly height: number;
  /** Focal length, pixels. */
  readonly focal: number;
  /** From the point it aims at, millimeters. */
  readonly distance: number;
  /** Point of the base in the middle of the picture. */
  readonly aim: { readonly x: number; readonly y: number };
  /** How far from straight above, degrees, and to which side: 0 from the right, 90 from above, 270 from below. */
  readonly tilt: number;
  readonly tiltFrom: number;
  /** The picture turned in itself, degrees. */
  readonly roll: number;
  /** A point at radius r (in focal lengths) is seen at r (1 + k1 r² + k2 r⁴). */
  readonly k1: number;
  readonly k2: number;
  /** What the camera moves beside its pose, at a time in ms; none on a stand. */
  readonly shake?: (at: number) => Shake;
}

/** Millimeters and radians in the camera's own axes. */
export interface Shake {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly pitch: number;
  readonly yaw: number;
  readonly roll: number;
}

type Vector = readonly [number, number, number];

/** The camera's place and axes at one moment, in the world's millimeters. */
export interface Pose {
  readonly eye: Vector;
  readonly ahead: Vector;
  readonly right: Vector;
  readonly down: Vector;
}

const RADIANS = Math.PI / 180;

const sum = (a: Vector, b: Vector, times: number): Vector => [
  a[0] + b[0] * times,
  a[1] + b[1] * times,
  a[2] + b[2] * times,
];

const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

const unit = (a: Vector): Vector => {
  const length = Math.hypot(...a);
  return [a[0] / length, a[1] / length, a[2] / length];
};

const turned = (a: Vector, b: Vector, angle: number): [Vector, Vector] => [
  sum([a[0] * Math.cos(angle), a[1] * Math.cos(angle), a[2] * Math.cos(angle)], b, Math.sin(angle)),
  sum([b[0] * Math.cos(angle), b[1] * Math.cos(angle), b[2] * Math.cos(angle)], a, -Math.sin(angle)),
];

/** The pose at a time, ms. */
export function poseAt(camera: Camera, at: number): Pose {
  const tilt = camera.tilt * RADIANS;
  const from = camera.tiltFrom * RADIANS;
  const back: Vector = [Math.sin(tilt) * Math.cos(from), Math.sin(tilt) * Math.sin(from), Math.cos(tilt)];
  let ahead: Vector = [-back[0], -back[1], -back[2]];
  let right = unit(cross(ahead, [0, 1, 0]));
  let down = cross(ahead, right);
  [right, down] = turned(right, down, camera.roll * RADIANS);
  let eye = sum([camera.aim.x, camera.aim.y, 0], back, camera.distance);
  const shake = camera.shake?.(at);
  if (shake !== undefined) {
    eye = sum(sum(sum(eye, right, shake.x), down, shake.y), ahead, shake.z);
    [ahead, right] = turned(ahead, right, shake.yaw);
    [ahead, down] = turned(ahead, down, shake.pitch);
    [right, down] = turned(right, down, shake.roll);
  }
  return { eye, ahead, right, down };
}

/** Where on the picture (pixels, the first pixel's middle is 0.5) a point of the world is seen. */
export function seenAt(camera: Camera, [x, y, z]: Vector, at = 0): { readonly x: number; readonly y: number } {
  const { eye, ahead, right, down } = poseAt(camera, at);
  const from: Vector = [x - eye[0], y - eye[1], z - eye[2]];
  const along = (axis: Vector) => from[0] * axis[0] + from[1] * axis[1] + from[2] * axis[2];
  const u = along(right) / along(ahead);
  const v = along(down) / along(ahead);
  const r2 = u * u + v * v;
  const lens = 1 + camera.k1 * r2 + camera.k2 * r2 * r2;
  return { x: camera.width / 2 + camera.focal * u * lens, y: camera.height / 2 + camera.focal * v * lens };
}

/** Directions of the pixels' rays, right and down in focal lengths, for a place inside each pixel (0 to 1). */
export function raysOf(camera: Camera, inX: number, inY: number): Float32Array {
  const { width, height, focal, k1, k2 } = camera;
  const rays = new Float32Array(2 * width * height);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const u = (column + inX - width / 2) / focal;
      const v = (row + inY - height / 2) / focal;
      const seen2 = u * u + v * v;
      let true2 = seen2;
      // The radius before the lens, by fixed point: lenses bend little.
      for (let step = 0; step < 8; step++) true2 = seen2 / (1 + k1 * true2 + k2 * true2 * true2) ** 2;
      const lens = 1 + k1 * true2 + k2 * true2 * true2;
      const i = 2 * (row * width + column);
      rays[i] = u / lens;
      rays[i + 1] = v / lens;
    }
  }
  return rays;
}
