import { faceNumber, type Graduations, type Reading } from "../lock/dial";
import type { Profile } from "../lock/profile";

const ORDINALS = [
  "zeroth",
  "first",
  "second",
  "third",
  "fourth",
  "fifth",
  "sixth",
  "seventh",
  "eighth",
  "ninth",
  "tenth",
];

/** "second"; digits beyond the tenth. */
export function ordinalWord(count: number): string {
  return ORDINALS[count] ?? `${count}th`;
}

/** A number of the combination as the face shows it: whole where it is whole. */
export function faceText(number: Graduations, { graduations, numbersIncrease }: Profile): string {
  const shown = faceNumber(number, graduations, numbersIncrease);
  return Number.isInteger(shown) ? String(shown) : shown.toFixed(1);
}

/** A reading to a tenth; never "100.0" on a dial of 100. */
export function readingText(at: Reading, { graduations, numbersIncrease }: Profile): string {
  const tenths = Math.round(faceNumber(at, graduations, numbersIncrease) * 10) % (graduations * 10);
  return (tenths / 10).toFixed(1);
}

/** A text with its first letter small: it goes on in a sentence. */
export function small(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}

/** A text with its first letter large: a sentence may begin with it. */
export function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
