import { ProblemError, type Words } from "../wording/problem";
import { COMBINATION_WORDS } from "./combinationWords";

/** Something a drill asks for that cannot be: here of combinations and their rules. */
export class DrillError extends ProblemError {
  override readonly name: string = "DrillError";
  protected override readonly words: Words = COMBINATION_WORDS;
}
