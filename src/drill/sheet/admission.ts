/** What may turn the dial of a station: anything, the hands on the screen, a dial in the hand, or all but coarse sources. */
export const ADMISSIONS = ["any", "screen", "real-dial", "not-coarse"] as const;

/** Which sources of turning a station admits. */
export type Admission = (typeof ADMISSIONS)[number];
