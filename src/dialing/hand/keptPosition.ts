import type { Graduations } from "../../lock/dial";

/**
 * Steps in one graduation. A power of two: a kept position is then exact in binary, sums of moves are exact, and
 * keeping it again changes nothing.
 */
export const STEPS_PER_GRADUATION = 64;

/** A position as it will be kept, graduations. Recording it so in the first place makes the replay exact. */
export function keptPosition(position: Graduations): Graduations {
  return Math.round(position * STEPS_PER_GRADUATION) / STEPS_PER_GRADUATION + 0;
}
