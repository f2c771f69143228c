/** A bolt and the hole of its strike, heights in millimeters. */
export interface BoltAndStrike {
  readonly bolt_mm: number;
  readonly hole_mm: number;
  /** How far the middle of the hole is above the middle of the bolt; negative below. */
  readonly above_mm: number;
}

/**
 * How far a bolt runs on the edge of its strike: what of its height lies beside the hole.
 *
 * Source: geometry: difference of two heights about one middle.
 *
 * @returns millimeters, 0 where the bolt goes in freely, at most the bolt's height
 */
export function bindsBy({ bolt_mm, hole_mm, above_mm }: BoltAndStrike): number {
  return Math.min(bolt_mm, Math.max(0, Math.abs(above_mm) - (hole_mm - bolt_mm) / 2));
}
