import * as z from "zod/mini";
import { fieldProblem } from "../../lock/fieldProblem";
import { DrillError } from "../drillError";
import { type Question, SOURCE_STATUSES, TOPICS } from "./question";

const text = (words: string) => z.string({ error: words }).check(z.minLength(1, { error: words }));
const wholeIndex = "must be the index of a choice, counted from 0";
const fewChoices = "must be a list of three to five choices";

const question = z.object(
  {
    id: text("must be a name"),
    topic: z.enum(TOPICS, { error: `must be one of ${TOPICS.join(", ")}` }),
    asks: text("must be a question"),
    choices: z
      .array(text("must be a choice in words"), { error: fewChoices })
      .check(z.minLength(3, { error: fewChoices }), z.maxLength(5, { error: fewChoices })),
    answer: z.number({ error: wholeIndex }).check(z.int({ error: wholeIndex }), z.gte(0, { error: wholeIndex })),
    explanation: text("must say why"),
    source: text('must name a source, or be "common practice, no source"'),
    sourceStatus: z.enum(SOURCE_STATUSES, { error: `must be one of ${SOURCE_STATUSES.join(", ")}` }),
  },
  { error: "must be a question" },
);

const bankSchema = z.object(
  {
    version: z.literal(1, { error: "must be 1, the only version there is" }),
    questions: z.array(question, { error: "must be a list of questions" }),
  },
  { error: "must be an object with version and questions" },
);

const misfit = (questions: readonly Question[]): string | undefined => {
  const ids = questions.map(({ id }) => id);
  const repeated = ids.findIndex((id, k) => ids.indexOf(id) < k);
  if (repeated >= 0) return `questions[${repeated}].id "${ids[repeated]}" is there twice`;
  const astray = questions.findIndex(({ answer, choices }) => answer >= choices.length);
  if (astray >= 0) return `questions[${astray}].answer must be below ${questions[astray]?.choices.length}, its choices`;
  const doubled = questions.findIndex(({ choices }) => new Set(choices).size < choices.length);
  return doubled >= 0 ? `questions[${doubled}].choices holds the same choice twice` : undefined;
};

/**
 * Reads a bank of questions from outside.
 *
 * @param value - parsed JSON
 * @throws {DrillError} `bad-question` with a sentence that names the field
 */
export function parseQuestions(value: unknown): readonly Question[] {
  const parsed = bankSchema.safeParse(value);
  if (!parsed.success) throw new DrillError("bad-question", `questions: ${fieldProblem(parsed.error.issues, value)}`);
  const problem = misfit(parsed.data.questions);
  if (problem !== undefined) throw new DrillError("bad-question", problem);
  return parsed.data.questions;
}
