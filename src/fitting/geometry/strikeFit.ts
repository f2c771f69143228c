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
 * @returns millimeters, 0 where the bolt goes in freely, at most the bolt's height
 */
export function bindsBy({ bolt_mm, hole_mm, above_mm }: BoltAndStrike): number {
  return Math.min(bolt_mm, Math.max(0, Math.abs(above_mm) - (hole_mm - bolt_mm) / 2));
}

/**
 * How much of the bolt's height the strike holds.
 *
 * @returns millimeters in [0, the bolt's height]
 */
export function overlap({ bolt_mm, hole_mm, above_mm }: BoltAndStrike): number {
  const top = Math.min(bolt_mm / 2, above_mm + hole_mm / 2);
  const bottom = Math.max(-bolt_mm / 2, above_mm - hole_mm / 2);
  return Math.max(0, top - bottom);
}
