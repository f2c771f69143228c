/** One inch in millimeters: exact by definition (international yard and pound, 1959). */
const MM_PER_INCH = 25.4;

/**
 * How far one turn moves a part along a thread of one start.
 *
 * Source: ASME B1.1, Unified inch threads: the lead of a thread with one start is its pitch, 1 inch / threads per inch (from
 * memory).
 *
 * @param threadsPerInch - > 0
 * @returns millimeters a turn
 */
export const leadOf = (threadsPerInch: number): number => MM_PER_INCH / threadsPerInch;

/**
 * Gap between dial and ring after the dial has been turned in.
 *
 * Source: geometry: a helix goes one lead along its axis for each turn.
 *
 * @param gap_mm - before
 * @param turnsIn - turns toward the door, negative back out
 * @param lead_mm - of the thread, millimeters a turn
 * @returns millimeters; below 0 the dial would press on the ring, and does not get that far
 */
export const gapAfter = (gap_mm: number, turnsIn: number, lead_mm: number): number => gap_mm - turnsIn * lead_mm;
