import { ProblemError } from "../../../wording/problem";
import { RUN_WORDS } from "./runWords";

/** A recorded handover that cannot be read or cannot have happened. */
export class RunError extends ProblemError {
  override readonly name = "RunError";
  protected override readonly words = RUN_WORDS;
}
