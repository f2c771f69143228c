import { ProblemError, type Words } from "../wording/problem";
import { DRILL_WORDS } from "./drillWords";

/** Something a drill asks for that cannot be. */
export class DrillError extends ProblemError {
  override readonly name: string = "DrillError";
  protected override readonly words: Words = DRILL_WORDS;
}
