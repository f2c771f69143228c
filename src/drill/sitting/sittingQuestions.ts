import { seededChance } from "../../statistics/chance";
import { SHIPPED_QUESTIONS } from "../questions/shippedQuestions";
import type { Sheet } from "../sheet/sheet";
import { type AskedQuestion, drawQuestions } from "./drawQuestions";

/**
 * The questions of a sitting, as they are asked: the same for the same seed. Their chance is apart from the one that plans
 * the tries.
 *
 * @param seed - of the sitting
 * @throws {SheetError} `too-few-questions`
 */
export function sittingQuestions({ sitting }: Sheet, seed: number): AskedQuestion[] {
  return drawQuestions(SHIPPED_QUESTIONS, sitting?.questions?.topics ?? [], seededChance(~seed));
}
