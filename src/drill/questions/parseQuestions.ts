import * as z from "zod/mini";
import { fieldProblem } from "../../lock/fieldProblem";
import { filled, list, must, oneOf, rulesOf } from "../../lock/fieldSchemas";
import type { Problem } from "../../wording/problem";
import { DRILL_WORDS, drillProblem } from "../drillWords";
import { SheetError } from "../sheetError";
import { type Question, SOURCE_STATUSES, TOPICS } from "./question";

const indexRule = rulesOf(DRILL_WORDS)("index-of-choice");

const question = z.object(
  {
    id: filled,
    topic: oneOf(TOPICS),
    asks: filled,
    choices: list(filled, 3, 5),
    answer: z.number(indexRule).check(z.int(indexRule), z.gte(0, indexRule)),
    explanation: filled,
    source: filled,
    sourceStatus: oneOf(SOURCE_STATUSES),
  },
  must("object"),
);

const bankSchema = z.object(
  {
    version: z.literal(1, must("only-version", { version: 1 })),
    questions: z.array(question, must("any-list")).check(z.maxLength(1000, must("short-list", { most: 1000 }))),
  },
  must("object"),
);

const misfit = (questions: readonly Question[]): Problem | undefined => {
  const ids = questions.map(({ id }) => id);
  const at = (index: number, field: string) => ["questions", index, field];
  const repeated = ids.findIndex((id, k) => ids.indexOf(id) < k);
  if (repeated >= 0) return drillProblem("same-id", at(repeated, "id"), { id: ids[repeated] });
  const astray = questions.findIndex(({ answer, choices }) => answer >= choices.length);
  if (astray >= 0)
    return drillProblem("answer-beyond-choices", at(astray, "answer"), { choices: questions[astray]?.choices.length });
  const doubled = questions.findIndex(({ choices }) => new Set(choices).size < choices.length);
  return doubled >= 0 ? drillProblem("same-choice-twice", at(doubled, "choices")) : undefined;
};

/**
 * Reads a bank of questions from outside.
 *
 * @param value - parsed JSON
 * @throws {SheetError} naming the field
 */
export function parseQuestions(value: unknown): readonly Question[] {
  const parsed = bankSchema.safeParse(value);
  if (!parsed.success) throw new SheetError(fieldProblem(parsed.error.issues, value), "questions");
  const problem = misfit(parsed.data.questions);
  if (problem !== undefined) throw new SheetError(problem);
  return parsed.data.questions;
}
