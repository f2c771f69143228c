import { faceNumber, type Graduations, type Turn } from "../lock/dial";
import type { Profile } from "../lock/profile";

const SMALL = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

/** A small count as a word, a larger one in digits. */
export function countWord(count: number): string {
  return SMALL[count] ?? String(count);
}

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
export function readingText(at: Graduations, { graduations, numbersIncrease }: Profile): string {
  const tenths = Math.round(faceNumber(at, graduations, numbersIncrease) * 10) % (graduations * 10);
  return (tenths / 10).toFixed(1);
}

/** A size to a tenth of a graduation, without its sign; finer where a tenth would say nothing. */
export function sizeText(size: Graduations): string {
  const tenths = Math.abs(size).toFixed(1);
  return tenths === "0.0" && Math.abs(size) >= 0.005 ? Math.abs(size).toFixed(2) : tenths;
}

/** "Left": a sentence may begin with it. */
export function capital(turn: Turn): string {
  return turn === "left" ? "Left" : "Right";
}
