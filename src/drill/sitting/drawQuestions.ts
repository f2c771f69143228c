import type { Chance } from "../../statistics/chance";
import { shuffled } from "../../statistics/shuffled";
import { drillProblem } from "../drillWords";
import type { Question } from "../questions/question";
import type { TopicShare } from "../sheet/sheet";
import { SheetError } from "../sheetError";

/** A question as it is asked once: its choices in an order of their own. */
export interface AskedQuestion {
  readonly question: Question;
  /** Indices of the choices, in the order shown. */
  readonly order: readonly number[];
}

/**
 * Questions drawn by topic, none twice, topics in the order asked for; the same for the same chance.
 *
 * @throws {SheetError} `too-few-questions` when a topic has fewer than are asked
 */
export function drawQuestions(
  bank: readonly Question[],
  topics: readonly TopicShare[],
  chance: Chance,
): AskedQuestion[] {
  return topics.flatMap(({ topic, count }) => {
    const there = bank.filter((question) => question.topic === topic);
    if (there.length < count) {
      throw new SheetError(drillProblem("too-few-questions", [], { there: there.length, topic, count }));
    }
    return shuffled(there, chance)
      .slice(0, count)
      .map((question) => ({ question, order: shuffled([...question.choices.keys()], chance) }));
  });
}

/**
 * Whether an answer is right.
 *
 * @param shown - place of the choice taken, as shown, counted from 0
 */
export function isAnsweredRight({ question, order }: AskedQuestion, shown: number): boolean {
  return order[shown] === question.answer;
}
