const SMALL = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

/** A small count as a word, a larger one in digits. */
export function countWord(count: number): string {
  return SMALL[count] ?? String(count);
}

/** As many of them as a word, where "no of three" would be none. */
export const countOrNone = (count: number): string => (count === 0 ? "none" : countWord(count));

/** The words that agree with a count: "is" and "are". @param many - with an s, if left out */
export const agreeing = (count: number, one: string, many = `${one}s`): string => (count === 1 ? one : many);

/** "1 try", "3 tries". @param many - the noun in the plural; with an s, if left out */
export const countText = (count: number, one: string, many?: string): string =>
  `${count} ${agreeing(count, one, many)}`;

/** "one turn", "three turns". @param many - as in `countText` */
export const countInWords = (count: number, one: string, many?: string): string =>
  `${countWord(count)} ${agreeing(count, one, many)}`;

/** "once", "twice", "three times". */
export const timesWord = (count: number): string =>
  count === 1 ? "once" : count === 2 ? "twice" : `${countWord(count)} times`;

/** Wheels by their numbers: "wheel 2", "wheels 1 and 3". @param wheels - counted from 1, at least one */
export function wheelsText(wheels: readonly number[]): string {
  if (wheels.length === 1) return `wheel ${wheels[0]}`;
  return `wheels ${wheels.slice(0, -1).join(", ")} and ${wheels.at(-1)}`;
}

/** A size with its unit: "1 graduation", "1.4 graduations". @param size - as `sizeText` gives it */
export const graduationsText = (size: string): string => (size === "1.0" ? "1 graduation" : `${size} graduations`);

/** A size in graduations to a tenth, without its sign; finer where a tenth would say nothing. */
export function sizeText(size: number): string {
  const tenths = Math.abs(size).toFixed(1);
  return tenths === "0.0" && Math.abs(size) >= 0.005 ? Math.abs(size).toFixed(2) : tenths;
}
