import bank from "../../../shared/questions.json" with { type: "json" };
import { parseQuestions } from "./parseQuestions";

/** The bank of questions that comes with the trainer. */
export const SHIPPED_QUESTIONS = parseQuestions(bank);
