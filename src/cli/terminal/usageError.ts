import { errorsOf, ProblemError } from "../../wording/problem";
import { USAGE_WORDS } from "./usageWords";

/** A command line that cannot be carried out, for standard error; exit status 2. */
export class UsageError extends ProblemError {
  override readonly name = "UsageError";
  protected override readonly words = USAGE_WORDS;
}

/** Makes the errors of a command line. */
export const usageError = errorsOf(USAGE_WORDS, UsageError);
