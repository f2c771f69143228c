/** How a bench sends just now. */
export interface Pace {
  /** Failures in a row. */
  readonly failures: number;
  /** Most records in the next part. */
  readonly records: number;
}

/** First wait after a failure, ms. */
const FIRST_MS = 2000;
/** Longest wait after a failure, ms. */
export const LONGEST_MS = 300_000;

/** @param records - most that a part may ever hold */
export const firstPace = (records: number): Pace => ({ failures: 0, records });

/** A part was answered: the next may hold twice as many. @param most - records that a part may ever hold */
export const afterAnswer = ({ records }: Pace, most: number): Pace => ({
  failures: 0,
  records: Math.min(most, 2 * records),
});

/** Nobody answered: the part was not at fault. */
export const afterSilence = ({ failures, records }: Pace): Pace => ({ failures: failures + 1, records });

/** The server failed at a part or refused it as a whole: half of it goes next, so that one record does not hold up the others. */
export const afterRefusal = ({ failures }: Pace, sent: number): Pace => ({
  failures: failures + 1,
  records: Math.max(1, Math.floor(sent / 2)),
});

/**
 * Wait before the next part, ms: twice as long after each failure up to five minutes, and never less than half of that. No two
 * benches wait alike, so a server that comes back is not asked by all at once.
 *
 * @param chance - from 0 to below 1
 */
export function wait_ms({ failures }: Pace, chance: number): number {
  if (failures === 0) return 0;
  const longest = Math.min(LONGEST_MS, FIRST_MS * 2 ** (failures - 1));
  return Math.round((longest * (1 + chance)) / 2);
}
