import { ProblemError } from "../../wording/problem";
import { RUN_WORDS } from "../run/rules/runWords";

/** An exercise that cannot be drawn: none of the conditions asked for fits the lock. */
export class TroubleError extends ProblemError {
  override readonly name = "TroubleError";
  protected override readonly words = RUN_WORDS;
}
