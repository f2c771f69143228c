import type { CutawayView } from "./cutawayView";

/*
 * The picture is a parallel projection. In the lock, x goes right and y up as the operator sees the dial; z counts discs
 * from the cam (0) back to wheel 1. A disc keeps its height and is narrowed; going back is going right and a little up.
 * Units are those of the viewBox; angles are degrees, counter-clockwise from the top.
 */

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Whether the picture is seen from the other side: the bolt lies where the draw pulls it from. */
export function isMirrored({ draw }: Pick<CutawayView, "draw">): boolean {
  return draw.turn === "left";
}

/** Where the parts of a pack lie in the picture. */
export interface Scene {
  /** Number of wheels. */
  readonly count: number;
  /** Middle of the cam. */
  readonly cam: Point;
  /** From one disc to the next one back. */
  readonly step: Point;
  /** How much narrower than high a disc looks. */
  readonly squash: number;
}

export const WIDTH = 470;
export const HEIGHT = 143;
export const WHEEL_RADIUS = 46;
/** Smaller than a wheel by more than the fence falls, so that the fence clears it. */
export const CAM_RADIUS = 36;

/** From the face of a disc to its back. */
export const THICKNESS: Point = { x: 7, y: -1.2 };

/** How far x leads down: one looks at the pack from above. */
export const LEAN = 0.09;
const WIDEST_SQUASH = 0.74;
/** How far the thrown bolt reaches from the middle of the cam. */
export const BOLT_LENGTH = 160;
const LAST_WHEEL_X = 426;
const WIDEST_STEP = 98;
const RISE = 18;

/** Lays out a pack of so many wheels; the more there are, the narrower they look. */
export function packScene(count: number): Scene {
  const squash = Math.min(WIDEST_SQUASH, (0.6 * (LAST_WHEEL_X - 132)) / count / WHEEL_RADIUS);
  const firstX = 14 + BOLT_LENGTH * squash;
  const room = LAST_WHEEL_X - firstX;
  const stepX = Math.min(WIDEST_STEP, room / count);
  const spare = room - stepX * count;
  return {
    count,
    cam: { x: firstX + spare / 2, y: 95 },
    step: { x: stepX, y: -Math.min(RISE / count, 7) },
    squash,
  };
}

/** Middle of the disc at depth z. */
export function centerAt({ cam, step }: Scene, z: number): Point {
  return { x: cam.x + z * step.x, y: cam.y + z * step.y };
}

/** Depth at which the spindle is cut off, toward the dial. */
export function spindleFront({ step }: Scene): number {
  return -60 / step.x;
}

/** A point of the lock in the picture. */
export function project(scene: Scene, x: number, y: number, z: number): Point {
  const center = centerAt(scene, z);
  return { x: center.x + x * scene.squash, y: center.y + x * LEAN - y };
}

/** Attribute that lays what is drawn about (0, 0) into the plane of a disc. */
export function planeTransform(scene: Scene, z: number, shift: Point = { x: 0, y: 0 }): string {
  const { x, y } = centerAt(scene, z);
  return `matrix(${scene.squash} ${LEAN} 0 1 ${x + shift.x} ${y + shift.y})`;
}

/** Attribute that turns what stands at the top by an angle, counter-clockwise. */
export function turnTransform(angle: number): string {
  return `rotate(${(-angle).toFixed(2)})`;
}

/** Corners as the `points` of a polygon. */
export function corners(points: readonly Point[]): string {
  return points.map(({ x, y }) => `${x.toFixed(2)},${y.toFixed(2)}`).join(" ");
}

/** Attribute that moves a thing drawn in the picture along x of the lock. */
export function shiftTransform({ squash }: Scene, by: number): string {
  return `translate(${(by * squash).toFixed(2)} ${(by * LEAN).toFixed(2)})`;
}

/** Widths of the columns under the picture, from the bolt to the margin behind wheel 1. */
export function columnWidths({ count, cam, step }: Scene): number[] {
  const first = cam.x - step.x / 2;
  const discs = Array.from({ length: count + 1 }, () => step.x);
  return [first, ...discs, Math.max(0, WIDTH - first - step.x * (count + 1))];
}
