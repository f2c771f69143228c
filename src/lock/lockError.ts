/** What can be wrong with a profile, a combination or a start. Screens may word the code; the message is a sentence. */
export type LockErrorCode =
  | "bad-profile"
  | "unknown-profile"
  | "bad-combination"
  | "bad-start"
  | "not-a-wheel-pack"
  | "too-far";

/** A lock that cannot be, a combination that does not fit it, or a start it cannot be in. */
export class LockError extends Error {
  override readonly name = "LockError";
  readonly code: LockErrorCode;

  constructor(code: LockErrorCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.code = code;
  }
}
