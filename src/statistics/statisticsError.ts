/** What can be wrong with what a statistic was asked for. */
export type StatisticsErrorCode =
  | "bad-count"
  | "bad-level"
  | "bad-limits"
  | "bad-parameter"
  | "empty-sample"
  | "no-direction"
  | "no-spread"
  | "not-finite"
  | "too-few-values"
  | "unbalanced";

/** The numbers given cannot answer the question asked; the message is one sentence for a person. */
export class StatisticsError extends Error {
  override readonly name = "StatisticsError";
  readonly code: StatisticsErrorCode;

  /**
   * @param code - what is wrong, for a program
   * @param message - what is wrong, for a person
   */
  constructor(code: StatisticsErrorCode, message: string) {
    super(message);
    this.code = code;
  }
}
