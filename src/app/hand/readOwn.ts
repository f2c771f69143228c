import { ordinalWord } from "../../dialing/words";
import { type Combination, combinationProblem } from "../../lock/combination";
import { faceNumber } from "../../lock/dial";
import { LOCK_WORDS } from "../../lock/lockWords";
import type { Profile } from "../../lock/profile";
import { type Problem, wordsOf } from "../../wording/problem";

/** What is wrong with a combination, as one says it: "The first number (100) is ..." */
export function combinationSentence(problem: Problem): string {
  const place = problem.path.at(-1);
  const subject = typeof place === "number" ? `The ${ordinalWord(place + 1)} number` : "It";
  if (problem.code === "not-a-number") return `${subject} is not a number.`;
  return `${subject} ${wordsOf(problem, LOCK_WORDS)}.`;
}

/** What the trainee typed, as numbers of the lock or as a sentence that says what is wrong; a field may be empty. */
export function readOwn(
  profile: Profile,
  typed: readonly (number | undefined)[],
): { numbers: Combination } | { problem: string } {
  const numbers = typed.filter((number) => number !== undefined);
  if (numbers.length < typed.length) {
    return { problem: `Enter the ${ordinalWord(typed.indexOf(undefined) + 1)} number.` };
  }
  const problem = combinationProblem(profile, numbers);
  if (problem !== null) return { problem: combinationSentence(problem) };
  return { numbers: numbers.map((number) => faceNumber(number, profile.graduations, profile.numbersIncrease)) };
}

/** The numbers of a combination as they are on the dial's face. */
export function faceNumbers(numbers: Combination, { graduations, numbersIncrease }: Profile): readonly number[] {
  return numbers.map((number) => faceNumber(number, graduations, numbersIncrease));
}
