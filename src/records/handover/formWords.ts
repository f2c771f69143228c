import { type Problem, problemsOf, type Words, wordsOf } from "../../wording/problem";

const MEND =
  "People who may not have the combination read the record: write who holds it, never what it is. Take out one of its numbers, even if it means something else there. Dates with a four-digit year and telephone numbers that begin with + may stay.";

/** What keeps the form of a handover record from being written. */
export const FORM_WORDS = {
  combination: `All numbers of the combination are near each other in "{label}". ${MEND}`,
  "combination-spread": `All numbers of the combination are spread over several fields. ${MEND}`,
  empty: '"{label}" is empty: fill it in.',
  "no-date": '"{label}" is not a date: write it as 2026-11-26.',
} as const satisfies Words;

/** Problems of the form. */
export const formProblem = problemsOf(FORM_WORDS);

/** What is wrong with the form, a sentence. */
export const formSentence = (problem: Problem): string => wordsOf(problem, FORM_WORDS);
