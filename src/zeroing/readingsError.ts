/** Readings that cannot be used; each problem is a sentence, most of them name a line. */
export class ReadingsError extends Error {
  override readonly name = "ReadingsError";
  /** At least one. */
  readonly problems: readonly string[];

  constructor(problems: readonly string[]) {
    super(problems.join("\n"));
    this.problems = problems;
  }
}
