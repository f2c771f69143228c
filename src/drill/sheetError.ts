import type { Words } from "../wording/problem";
import { DrillError } from "./drillError";
import { DRILL_WORDS } from "./drillWords";

/** A sheet, a link, a course or a bank of questions that asks for what cannot be. */
export class SheetError extends DrillError {
  protected override readonly words: Words = DRILL_WORDS;
}
