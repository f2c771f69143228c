import { type Offset, offsetOf } from "../offCenter";
import { type OffsetEstimate, offsetEstimate, type RingReading } from "../offsetEstimate";

/** A trainee's own estimate of how far a ring is off, beside what the readings tell. */
export interface JudgedOffset {
  readonly found: OffsetEstimate;
  /** From the trainee's estimate to the one by least squares, millimeters. */
  readonly away_mm: number;
  /** Whether the readings allow it; "cannot-tell" while there are too few to know how far they spread. */
  readonly verdict: "agrees" | "differs" | "cannot-tell";
}

/** Four readings leave one for their spread, which tells next to nothing of it; twice round leaves five. */
const FEWEST = 8;

/**
 * Judges an estimate of a ring's offset against least squares of the same readings, by their own uncertainty: it agrees where
 * the readings do not speak against it at 95 %, right and up together.
 *
 * @param own - what the trainee says
 * @param readings - at four marks, once round or more often
 * @param radius_mm - of the marks, > 0
 * @throws {StatisticsError} `too-few-values` for fewer than 3 places
 */
export function judgeOffset(
  own: Offset,
  readings: readonly RingReading[],
  radius_mm: number,
  perTurn: number,
): JudgedOffset {
  const found = offsetEstimate(readings, radius_mm, perTurn);
  const away_mm = offsetOf({ x_mm: own.x_mm - found.offset.x_mm, y_mm: own.y_mm - found.offset.y_mm });
  if (readings.length < FEWEST) return { found, away_mm, verdict: "cannot-tell" };
  return { found, away_mm, verdict: found.agreesWith(own) ? "agrees" : "differs" };
}
