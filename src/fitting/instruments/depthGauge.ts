import { exact } from "../../lock/exact";
import { FITTING } from "../trainingValues";

/** What the vernier tells apart, millimeters. */
export const VERNIER_mm = FITTING.depthStep_mm;
/** Lines of the vernier, and what they are as long as on the scale, millimeters. */
export const VERNIER = { lines: FITTING.vernierLines, long_mm: FITTING.vernierLong_mm };

/** A depth gauge that stands on a block on the cam's face, its rod on the spindle's end. */
export interface DepthReading {
  /** Height of the block, millimeters. */
  readonly block_mm: number;
  /** What the scale shows, millimeters in tenths: from the block's top down to the spindle's end. */
  readonly depth_mm: number;
  /** The line of the scale that the vernier's zero has reached, millimeters, and the line of the vernier that meets one. */
  readonly whole_mm: number;
  readonly line: number;
}

/**
 * Sets a depth gauge over a spindle's end.
 *
 * A vernier whose ten lines are as long as nine millimeters: its line k lies 0.9 k beyond its zero, so it meets a line of the
 * scale where the zero is k tenths past one.
 *
 * @param out_mm - how far the spindle stands out of the cam's face; negative inside
 */
export function setDepthGauge(out_mm: number): DepthReading {
  const block_mm = FITTING.depthBlocks_mm.find((one) => one > out_mm) ?? out_mm;
  const tenths = Math.round((block_mm - out_mm) / VERNIER_mm);
  return {
    block_mm,
    depth_mm: tenths / VERNIER.lines,
    whole_mm: Math.floor(tenths / VERNIER.lines),
    line: tenths % VERNIER.lines,
  };
}

/** How far a spindle stands out by a reading: the block less what the scale shows, millimeters. */
export const outBy = ({ block_mm, depth_mm }: Pick<DepthReading, "block_mm" | "depth_mm">): number =>
  block_mm - depth_mm;

/** Whether a figure that somebody reckoned is what the gauge shows, within the one line that an eye may miss by. */
export const agreesWithGauge = (own_mm: number, set: DepthReading): boolean =>
  exact(Math.abs(own_mm - outBy(set))) <= VERNIER_mm;
