import type { Graduations, Position } from "../dial";

/** A dial whose middle is off the axis: what it reads too much goes round with it. */
export interface Runout {
  /** The most it reads too much or too little, graduations, >= 0. */
  readonly size: Graduations;
  /** Where the dial stands when it reads right and too much to the left of that, graduations. */
  readonly at: Graduations;
}

/**
 * How much more an index reads than it would with the dial on the axis: a sine over the turn, the eccentricity of a graduated
 * circle to its first order (`fitting/offCenter` has it exactly).
 *
 * @returns graduations
 */
export const readsTooMuch = ({ size, at }: Runout, dial: Position, perTurn: number): Graduations =>
  size * Math.sin((2 * Math.PI * (dial - at)) / perTurn);
