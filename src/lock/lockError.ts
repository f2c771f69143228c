import { ProblemError } from "../wording/problem";
import { LOCK_WORDS } from "./lockWords";

/** A lock that cannot be, a combination that does not fit it, or a start it cannot be in. */
export class LockError extends ProblemError {
  override readonly name = "LockError";
  protected override readonly words = LOCK_WORDS;
}
