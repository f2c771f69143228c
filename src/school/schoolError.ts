import { ProblemError } from "../wording/problem";
import { SCHOOL_WORDS } from "./schoolWords";

/** Why a class server does not do what it was asked. */
export class SchoolError extends ProblemError {
  override readonly name = "SchoolError";
  protected override readonly words = SCHOOL_WORDS;
}
