import type { Assembly } from "./assembly";
import { gapOf, type LockToFit } from "./fittedLock";
import { FITTING } from "./trainingValues";

/**
 * Gap between dial and ring at a place of the rim, the dial's zero at the top.
 *
 * A dial that leans by a small angle comes closer on one side by the radius times the angle, and is as much farther off on the
 * other (plane geometry, first order). A bent spindle leans toward where it holds the dial; a body that hangs by one screw
 * leans down. A ring off center shifts in its own plane, and leaves the gap as it is.
 *
 * @param part - of a turn, to the right of the top
 * @returns millimeters, >= 0
 */
export function gapAround({ spindle, dialIn, body }: Assembly, lock: LockToFit, part: number): number {
  const angle = 2 * Math.PI * part;
  const { x_mm, y_mm } = spindle.bend;
  const bent = FITTING.bentLean * (x_mm * Math.sin(angle) + y_mm * Math.cos(angle));
  const hangs = body === "by-one" ? -FITTING.bodyLean * Math.cos(angle) : 0;
  const gap_mm = gapOf(lock, spindle.length_mm, dialIn ?? 0);
  return Math.max(0, gap_mm - lock.sizes.markRadius_mm * (bent + hangs));
}
