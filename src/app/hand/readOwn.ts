import { ordinalWord } from "../../dialing/words";
import { type Combination, combinationProblem } from "../../lock/combination";
import { faceNumber } from "../../lock/dial";
import { LOCK_WORDS } from "../../lock/lockWords";
import { type Problem, wordsOf } from "../../lock/problem";
import type { Profile } from "../../lock/profile";

/** What is wrong with a combination, as one says it: "The first number (100) is ..." */
export function combinationSentence(problem: Problem): string {
  const place = problem.path.at(-1);
  const subject = typeof place === "number" ? `The ${ordinalWord(place + 1)} number` : "It";
  if (problem.code === "not-a-number") return `${subject} is not a number.`;
  return `${subject} ${wordsOf(problem, LOCK_WORDS)}.`;
}

/** What the trainee typed, as numbers of the lock or as a sentence that says what is wrong. */
export function readOwn(profile: Profile, texts: readonly string[]): { numbers: Combination } | { problem: string } {
  const typed = texts.map((text) => (text.trim() === "" ? Number.NaN : Number(text)));
  const missing = typed.findIndex((number) => !Number.isFinite(number));
  if (missing >= 0) return { problem: `Enter the ${ordinalWord(missing + 1)} number.` };
  const problem = combinationProblem(profile, typed);
  if (problem !== null) return { problem: combinationSentence(problem) };
  return { numbers: typed.map((number) => faceNumber(number, profile.graduations, profile.numbersIncrease)) };
}

/** The numbers of a combination as one would type them. */
export function faceTexts(numbers: Combination, { graduations, numbersIncrease }: Profile): readonly string[] {
  return numbers.map((number) => String(faceNumber(number, graduations, numbersIncrease)));
}
