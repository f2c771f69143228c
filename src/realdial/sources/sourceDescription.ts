import type { Graduations } from "../../lock/dial";
import type { SourceKind } from "./sourceKinds";

/** Steps from this size on are coarse: a hand cannot stop nearer than half a step to where it meant to, graduations. */
export const COARSE_FROM: Graduations = 0.5;

/** What turned a dial: how fine it is, and how quiet. */
export interface SourceDescription {
  readonly kind: SourceKind;
  /** The smallest move that it can tell, graduations. */
  readonly resolution: Graduations;
  /** Standard deviation of its readings at rest, graduations; null where it has not been measured. */
  readonly noise: Graduations | null;
  /** Whether it serves for count and order alone, since its steps are too large to mark a stop by. */
  readonly isCoarse: boolean;
  /** The hand chose that no motion is kept of what this turns: a recording of a real dial is its combination. */
  readonly keepsNoMotion?: boolean | undefined;
}

/** Whether the motion of what was turned by these may be kept. */
export const mayKeepMotion = ({ sources = [] }: { readonly sources?: readonly SourceDescription[] | undefined }) =>
  sources.every(({ keepsNoMotion }) => keepsNoMotion !== true);

/**
 * @param resolution - graduations, > 0
 * @param noise - graduations, or null where it has not been measured
 * @param keepsMotion - whether motions of it may be kept
 */
export const describeSource = (
  kind: SourceKind,
  resolution: Graduations,
  noise: Graduations | null = null,
  keepsMotion = true,
): SourceDescription => ({
  kind,
  resolution,
  noise,
  isCoarse: resolution >= COARSE_FROM,
  ...(!keepsMotion && { keepsNoMotion: true }),
});
