import { countText } from "../wording/amountWords";

/** Most first numbers that a sheet asks for alone. */
const MOST_FIRST = 6;

/** The name under which the dialing of a combination is recorded. @param upTo - how many first numbers alone; all where left out */
export const exerciseOf = (upTo?: number): string => (upTo === undefined ? "open" : `first ${upTo}`);

const FIRST_NUMBERS: ReadonlyMap<string, number> = new Map(
  Array.from({ length: MOST_FIRST }, (_, k) => [exerciseOf(k + 1), k + 1]),
);

/** How many first numbers alone an exercise asks for; null for all of them, undefined for one that is not known here. */
export const firstNumbersOf = (exercise: string): number | null | undefined =>
  exercise === exerciseOf() ? null : FIRST_NUMBERS.get(exercise);

/** First numbers in words: "first number", "first 2 numbers". */
export const firstNumbersWords = (upTo: number): string =>
  upTo === 1 ? "first number" : `first ${countText(upTo, "number", "numbers")}`;
