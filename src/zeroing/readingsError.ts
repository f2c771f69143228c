import { type LineProblem, lineProblemText } from "./readingsWords";

/** Readings that cannot be used: every line that is bad, or why there are too few. */
export class ReadingsError extends Error {
  override readonly name = "ReadingsError";
  /** At least one. */
  readonly problems: readonly LineProblem[];

  constructor(problems: readonly LineProblem[]) {
    super();
    this.problems = problems;
  }

  override get message(): string {
    return this.problems.map(lineProblemText).join("\n");
  }
}
