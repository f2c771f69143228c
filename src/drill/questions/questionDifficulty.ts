import type { Interval } from "../../statistics/interval";
import { wilsonInterval } from "../../statistics/proportion";

/** One answer once given on this device. */
export interface AnswerGiven {
  readonly questionId: string;
  readonly isRight: boolean;
}

/** How hard a question has proved here. */
export type Difficulty =
  | { readonly kind: "not asked yet" }
  | {
      readonly kind: "asked";
      readonly asked: number;
      readonly right: number;
      /** Share answered right, in [0, 1]. */
      readonly share: number;
      /** 95 %, Wilson. */
      readonly interval: Interval;
    };

/** How hard a question has proved, from all answers given to it here. */
export function questionDifficulty(questionId: string, answers: readonly AnswerGiven[]): Difficulty {
  const given = answers.filter((answer) => answer.questionId === questionId);
  const asked = given.length;
  if (asked === 0) return { kind: "not asked yet" };
  const right = given.filter(({ isRight }) => isRight).length;
  return { kind: "asked", asked, right, share: right / asked, interval: wilsonInterval(right, asked) };
}

/** A difficulty in words. */
export function difficultyText(difficulty: Difficulty): string {
  if (difficulty.kind === "not asked yet") return "not asked yet";
  const { asked, right, share, interval } = difficulty;
  const percent = (value: number) => `${(100 * value).toFixed(0)} %`;
  return `${right} of ${asked} right, ${percent(share)} (${percent(interval.low)} to ${percent(interval.high)})`;
}
