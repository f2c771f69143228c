import { type Graduations, type Position, reading } from "../lock/dial";
import type { Runout } from "../lock/train/runout";

/** A way across the door as the operator sees it, millimeters: to the right, and up. */
export interface Offset {
  readonly x_mm: number;
  readonly y_mm: number;
}

/** How far off the axis, millimeters. */
export const offsetOf = ({ x_mm, y_mm }: Offset): number => Math.hypot(x_mm, y_mm);

/** On the axis. */
export const CENTERED: Offset = { x_mm: 0, y_mm: 0 };

/** A face of marks that turns in a ring of indexes, and how far both stand off the axis of the spindle. */
export interface FaceInRing {
  readonly perTurn: number;
  /** Where the marks meet the ring, millimeters from the middle of either, > the sum of both offsets. */
  readonly radius_mm: number;
  /** The middle of the ring off the axis. The ring stands still. */
  readonly ring: Offset;
  /** The middle of the dial off the axis, as it lies with zero at the top. It goes round with the dial. */
  readonly dial: Offset;
}

/** A ring's face of marks. @param ring - null where there is none: it is as good as on the axis @param dial - on the axis where left out */
export const faceOf = (perTurn: number, radius_mm: number, ring: Offset | null, dial = CENTERED): FaceInRing => ({
  perTurn,
  radius_mm,
  ring: ring ?? CENTERED,
  dial,
});

const radians = (angle: Graduations, perTurn: number) => (2 * Math.PI * angle) / perTurn;

/** Turns a way to the right, about the axis. @param angle - radians, clockwise */
export function turnedRight({ x_mm, y_mm }: Offset, angle: number): Offset {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return { x_mm: x_mm * cos + y_mm * sin, y_mm: y_mm * cos - x_mm * sin };
}

/**
 * How much more an index reads than it would with ring and dial on the axis; exact.
 *
 * The eye goes from the middle of the dial to the index, and the mark on that line is what it reads. So the error is the
 * angle between that line and the one to the index of a centered ring: plane trigonometry, by the angle of two vectors
 * (cross and dot product under `atan2`).
 *
 * @param place - where the index stands on the ring, graduations to the right of its top
 * @param position - of the dial, unwrapped graduations
 * @returns graduations in (-half a turn, half a turn]
 */
export function readingError(face: FaceInRing, place: Graduations, position: Position): Graduations {
  const { perTurn, radius_mm, ring } = face;
  const q = radians(place, perTurn);
  const dial = turnedRight(face.dial, -radians(position, perTurn));
  const [x, y] = [ring.x_mm - dial.x_mm, ring.y_mm - dial.y_mm];
  // Along the index's own direction, and across it, clockwise.
  const along = radius_mm + x * Math.sin(q) + y * Math.cos(q);
  const across = x * Math.cos(q) - y * Math.sin(q);
  return (Math.atan2(across, along) * perTurn) / (2 * Math.PI);
}

/**
 * The same to the first order in the offsets: N/(2 pi) * (x cos q - y sin q)/r, a sine round the ring that is largest at two
 * opposite places. This is the eccentricity of a graduated circle, known from instruments that measure angles.
 *
 * @returns graduations
 */
export function firstOrderError(face: FaceInRing, place: Graduations, position: Position): Graduations {
  const { perTurn, radius_mm, ring } = face;
  const q = radians(place, perTurn);
  const dial = turnedRight(face.dial, -radians(position, perTurn));
  const across = (ring.x_mm - dial.x_mm) * Math.cos(q) - (ring.y_mm - dial.y_mm) * Math.sin(q);
  return (across / radius_mm) * (perTurn / (2 * Math.PI));
}

/**
 * The error of an index that goes round with a dial off its axis, to the first order: what a lock train takes.
 *
 * -N/(2 pi r) * (x cos p - y sin p) is a sine of the size N/(2 pi r) * hypot(x, y) that begins at p = atan2(x, y).
 *
 * @param dial - the middle of the dial off the axis, zero at the top
 */
export function runoutOf(dial: Offset, radius_mm: number, perTurn: number): Runout {
  const perRadian = perTurn / (2 * Math.PI);
  return {
    size: (offsetOf(dial) / radius_mm) * perRadian,
    at: reading(Math.atan2(dial.x_mm, dial.y_mm) * perRadian, perTurn),
  };
}

/** What an index that stands at a place of the ring reads, unwrapped graduations. */
export const readingAt = (face: FaceInRing, place: Graduations, position: Position): Graduations =>
  position + place + readingError(face, place, position);
