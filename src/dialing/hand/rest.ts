import type { Milliseconds } from "../../lock/dial";

/**
 * A hand that has not moved for this long rests: its recording gets a point of its own, and a heavy dial sticks again. It
 * may only be between two keys: a stop, a reading and a pause each have a longer time of their own.
 * Training value: common practice, no source.
 */
export const RESTS_AFTER: Milliseconds = 150;

/** Whether a hand has rested. @param lastMoved - when it moved last, or null where it has not yet */
export const hasRested = (lastMoved: Milliseconds | null, now: Milliseconds): boolean =>
  lastMoved !== null && now - lastMoved > RESTS_AFTER;
