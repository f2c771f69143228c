/**
 * What comes of a try in which a device lost the hand, so that its turns are in doubt: it goes on and counts, marked; it is
 * broken off and begun again, so often as `MOST_BEGUN_AGAIN` allows; or it does not count as right.
 */
export const LOST_SIGHT_RULES = ["counts", "try-again", "fails"] as const;

/** A station's rule for turns in doubt. */
export type LostSightRule = (typeof LOST_SIGHT_RULES)[number];
