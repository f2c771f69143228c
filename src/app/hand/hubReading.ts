/** How the reading stands in the hub. */
export type HubStrength = "shown" | "faint" | "hidden";

/** What one has asked for: the reading as the lessons have it, or always, or never. */
export type ReadingWish = "by lesson" | "shown" | "hidden";

/** Every wish there is; the lessons' way is the default. */
export const READING_WISHES: readonly [ReadingWish, ...ReadingWish[]] = ["by lesson", "shown", "hidden"];

/** Openings with the reading in full, and openings after which it is gone. */
const SHOWN_FOR = 3;
const FAINT_UNTIL = 6;

/** Counts of openings that make a difference, in words a browser can keep. */
export const OPENINGS: readonly [string, ...string[]] = ["0", "1", "2", "3", "4", "5", "6"];

/** One more opening; from the last count that makes a difference it stays. */
export function oneMoreOpening(openings: string): string {
  return OPENINGS[Math.min(OPENINGS.indexOf(openings) + 1, OPENINGS.length - 1)] ?? OPENINGS[0];
}

/**
 * How the digital reading stands in the hub of the dial, where help shows it at all.
 *
 * Digits are a crutch: whoever reads them does not learn to read the mark against the index. They are there for the first
 * openings, then pale, then gone, unless one asks for them.
 *
 * @param openings - locks opened with full help so far, an integer >= 0
 */
export function hubStrength(openings: number, wish: ReadingWish): HubStrength {
  if (wish !== "by lesson") return wish;
  if (openings < SHOWN_FOR) return "shown";
  return openings < FAINT_UNTIL ? "faint" : "hidden";
}
