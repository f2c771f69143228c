import { ProblemError } from "../wording/problem";
import { type LineProblem, lineProblemText, READINGS_WORDS } from "./readingsWords";

/** Readings that cannot be used: every line that is bad, or why there are too few. */
export class ReadingsError extends ProblemError {
  override readonly name = "ReadingsError";
  protected override readonly words = READINGS_WORDS;
  readonly problems: readonly LineProblem[];

  constructor(problems: readonly [LineProblem, ...LineProblem[]]) {
    super(problems[0].problem);
    this.problems = problems;
  }

  override get message(): string {
    return this.problems.map(lineProblemText).join("\n");
  }
}
