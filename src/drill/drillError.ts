/** What a drill can ask for in vain. */
export type DrillErrorCode = "no-combination" | "bad-odds";

/** Something a drill asks for that cannot be; its message is a sentence. */
export class DrillError extends Error {
  override readonly name = "DrillError";
  readonly code: DrillErrorCode;

  constructor(code: DrillErrorCode, message: string) {
    super(message);
    this.code = code;
  }
}
