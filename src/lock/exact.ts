import type { Graduations } from "./dial";

/*
 * The one arithmetic of positions. A position, a number, a play, a tolerance: each is a whole count of millionths of a
 * graduation. Whole counts are added and compared exactly in a double as far as the dial may go (1e9 graduations are
 * 1e15 millionths, below 2^53), so no sum of moves drifts, and a stop that lies on an edge lies on it however it was
 * reached. A millionth is the coarsest step that holds both decimals and the 64ths of a graduation that recordings keep.
 */

/** Steps in one graduation. */
export const MILLIONTHS = 1e6;

/** Between 2^52 and 2^53 a double holds whole numbers alone: a sum that lands there is rounded to one. */
const TO_WHOLE = 1.5 * 2 ** 52;

/**
 * Where a position lies among the steps: a whole number, the nearest one; halves go to the even one, so that left and
 * right are treated alike. Never -0. In a third of the time of `Math.round`.
 *
 * @param position - graduations, within 2e9 of 0
 */
export function inMillionths(position: Graduations): number {
  return position * MILLIONTHS + TO_WHOLE - TO_WHOLE;
}

/** The position of a step: the double nearest its decimal, as a file would give it, graduations. */
export function fromMillionths(steps: number): Graduations {
  return steps / MILLIONTHS;
}

/**
 * The step nearest a position, as a position. Every sum and difference of positions goes through this before it is
 * compared: 0.1 + 0.2 is then 0.3.
 */
export function exact(position: Graduations): Graduations {
  return inMillionths(position) / MILLIONTHS;
}
