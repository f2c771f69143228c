import { FIELD_WORDS } from "../lock/fieldWords";
import { type Problem, problemsOf, problemText, type Words } from "../wording/problem";

/** What can be wrong with a file of readings. */
export const READINGS_WORDS = {
  ...FIELD_WORDS,
  "beyond-half-turn": "must be within half a turn ({farthest} graduations) of zero",
  "line-too-long": "is too long to be a stop",
  "line-not-json": "is not one whole JSON object: {beginning}",
  "more-bad-lines": ": {count:more line is|more lines are} bad as well",
  "no-stops": ": there are no stops turning {turn}; record at least two in each direction",
  "only-stop": "is the only stop turning {turn}; record at least two in each direction",
} as const satisfies Words;

/** Problems of a file of readings. */
export const readingsProblem = problemsOf(READINGS_WORDS);

/** A problem of a file, where it is known with the number of its line, counted from 1. */
export interface LineProblem {
  readonly line: number | null;
  readonly problem: Problem;
}

/** What is wrong, and in which line. */
export const lineProblemText = ({ line, problem }: LineProblem): string =>
  `${line === null ? "" : `line ${line}: `}${problemText(problem, READINGS_WORDS)}`;
