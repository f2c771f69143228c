import { ordinalWord } from "../../dialing/words";
import { type Combination, parseCombination } from "../../lock/combination";
import { faceNumber } from "../../lock/dial";
import type { Profile } from "../../lock/profile";

/** "combination[0] (100) is …" as one says it: "The first number (100) is …". */
export const inPlainWords = (message: string) =>
  `${message
    .replace(/^combination\[(\d+)\]/, (_, index) => `The ${ordinalWord(Number(index) + 1)} number`)
    .replace(/^combination has/, "It has")
    .replace("(NaN) ", "")}.`;

/** What the trainee typed, as numbers of the lock or as a sentence that says what is wrong. */
export function readOwn(profile: Profile, texts: readonly string[]): { numbers: Combination } | { problem: string } {
  const typed = texts.map((text) => (text.trim() === "" ? Number.NaN : Number(text)));
  const missing = typed.findIndex((number) => !Number.isFinite(number));
  if (missing >= 0) return { problem: `Enter the ${ordinalWord(missing + 1)} number.` };
  try {
    const onFace = parseCombination(profile, typed);
    return { numbers: onFace.map((number) => faceNumber(number, profile.graduations, profile.numbersIncrease)) };
  } catch (error) {
    return { problem: error instanceof Error ? inPlainWords(error.message) : String(error) };
  }
}

/** The numbers of a combination as one would type them. */
export function faceTexts(numbers: Combination, { graduations, numbersIncrease }: Profile): readonly string[] {
  return numbers.map((number) => String(faceNumber(number, graduations, numbersIncrease)));
}
