import type { Graduations } from "../../lock/dial";

/**
 * What an eye off the axis reads wrong, since dial and ring do not lie in one plane.
 *
 * A line of sight that leans by an angle crosses a gap g shifted by g tan(angle); on a dial of radius r that is an arc of
 * N/(2 pi r) graduations a millimeter. The readings of any scale behind its pointer share it.
 *
 * Source: geometry: plane trigonometry.
 *
 * @param gap_mm - between the planes of dial and index, >= 0
 * @param angle_deg - of the eye off the axis across the index, degrees in (-90, 90); positive from the right
 * @param radius_mm - of the marks, > 0
 * @returns graduations; positive reads too much
 */
export function parallaxError(gap_mm: number, angle_deg: number, radius_mm: number, perTurn: number): Graduations {
  const shift_mm = gap_mm * Math.tan((angle_deg * Math.PI) / 180);
  return (Math.atan2(shift_mm, radius_mm) * perTurn) / (2 * Math.PI);
}

/**
 * The gap that a reading from the side tells.
 *
 * Source: `parallaxError`, solved for the gap.
 *
 * @param error - what is read too much from there, beside straight on, graduations
 * @param angle_deg - as above, not 0
 * @returns millimeters
 */
export const gapFromSide = (error: Graduations, angle_deg: number, radius_mm: number, perTurn: number): number =>
  (radius_mm * Math.tan((2 * Math.PI * error) / perTurn)) / Math.tan((angle_deg * Math.PI) / 180);

/**
 * How far the eye may stand off the axis before it reads wrong by more than it may.
 *
 * Source: `parallaxError`, solved for the angle.
 *
 * @param limit - graduations, >= 0
 * @returns degrees in [0, 90]; 90 where there is no gap
 */
export function largestAngle(gap_mm: number, limit: Graduations, radius_mm: number, perTurn: number): number {
  const shift_mm = radius_mm * Math.tan((2 * Math.PI * limit) / perTurn);
  return (Math.atan2(shift_mm, gap_mm) * 180) / Math.PI;
}
