import type { Graduations } from "../../../lock/dial";

/** A move is kept in steps of a 64th, so it may come out shorter by that without anything in its way, graduations. */
const ROUNDING: Graduations = 1 / 32;

/** Whether a positive stop held a dial back: it went less far than it was turned. */
export function wasHeld(asked: Graduations, moved: Graduations): boolean {
  return Math.abs(moved) < Math.abs(asked) - ROUNDING;
}
