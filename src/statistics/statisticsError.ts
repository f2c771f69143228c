import { type Path, ProblemError, problemsOf, type ValuesFor, type Words } from "../wording/problem";

/** What can be wrong with what a statistic was asked for. Ranges are intervals: "(0, 1]" is above 0 and at most 1. */
const STATISTICS_WORDS = {
  "bad-count": "must be a whole number in {range}",
  "bad-level": "must lie in {range}",
  "bad-limits": ": no value lies between {low} and {high}",
  "bad-parameter": "must lie in {range}",
  "empty-sample": ": there are no values yet",
  "no-spread": ": all values are the same, so nothing tells them apart",
  "not-finite": ": not every value is a number",
  "too-few-values": ": at least {least:value is|values are} needed",
  unbalanced: ": every appraiser must have measured every part equally often",
} as const satisfies Words;

type StatisticsWords = typeof STATISTICS_WORDS;

const statisticsProblem = problemsOf(STATISTICS_WORDS);

/** The numbers given cannot answer the question asked. */
export class StatisticsError extends ProblemError {
  override readonly name = "StatisticsError";
  protected override readonly words = STATISTICS_WORDS;
}

/**
 * Refuses numbers that cannot answer.
 *
 * @param path - name of the argument, where the code says a rule for one
 * @throws {StatisticsError} where it does not hold
 */
export function mustHold<Code extends keyof StatisticsWords>(
  holds: boolean,
  code: Code,
  path: Path = [],
  ...values: ValuesFor<StatisticsWords[Code]>
): asserts holds {
  if (!holds) throw new StatisticsError(statisticsProblem(code, path, ...values));
}

/** Refuses an argument outside its range, which is for the words. @throws {StatisticsError} */
export function mustLieIn(
  range: string,
  name: string,
  found: number,
  holds: boolean,
  code: "bad-count" | "bad-level" | "bad-parameter" = "bad-parameter",
): void {
  mustHold(holds, code, [name], { range, found });
}
