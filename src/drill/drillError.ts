/** What can be wrong with what a drill asks for, or with a file of one. */
export type DrillErrorCode =
  | "no-combination"
  | "not-counted"
  | "bad-odds"
  | "bad-rules"
  | "bad-sheet"
  | "bad-link"
  | "bad-edit"
  | "bad-question"
  | "too-few-questions"
  | "bad-record";

/** Something a drill asks for that cannot be; its message is a sentence. */
export class DrillError extends Error {
  override readonly name = "DrillError";
  readonly code: DrillErrorCode;

  constructor(code: DrillErrorCode, message: string) {
    super(message);
    this.code = code;
  }
}
