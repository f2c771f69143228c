import type { Graduations } from "../../../lock/dial";

/** A point on the screen, CSS pixels, y downward: a pointer event is one. */
export interface ScreenPoint {
  readonly clientX: number;
  readonly clientY: number;
}

/**
 * Direction of a pointer as seen from the middle of the dial.
 *
 * @param pointer - CSS pixels
 * @param center - middle of the dial, CSS pixels
 * @param perTurn - graduations in one turn of the dial, > 0
 * @returns graduations in [-perTurn/2, perTurn/2]; zero is straight up, left of it is positive
 */
export function pointerAngle(pointer: ScreenPoint, center: ScreenPoint, perTurn: number): Graduations {
  const toTheLeft = center.clientX - pointer.clientX;
  const upward = center.clientY - pointer.clientY;
  return (Math.atan2(toTheLeft, upward) / (2 * Math.PI)) * perTurn;
}

/** How far a pointer is from the middle of the dial, CSS pixels. */
export function pointerRadius(pointer: ScreenPoint, center: ScreenPoint): number {
  return Math.hypot(pointer.clientX - center.clientX, pointer.clientY - center.clientY);
}
