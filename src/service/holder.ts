import type { Question } from "./visitAct";
import type { Condition } from "./wrongThing";

/** What the holder of the door has to say. */
export type Answer = "slow" | "heavy" | "past-the-number" | "painted" | "knocked" | "built" | "stiff" | "nothing";

/** What each condition makes the holder say, the most striking first. What a holder cannot notice is in none of them. */
const TELLS: Readonly<Record<Question, readonly (readonly [Condition, Answer])[]>> = {
  trouble: [
    ["batteries-low", "slow"],
    ["ring-painted", "heavy"],
    ["ring-dirty", "heavy"],
    ["bearing-dry", "heavy"],
    ["key-worn", "past-the-number"],
    ["bolt-drags", "stiff"],
  ],
  "work-nearby": [
    ["ring-painted", "painted"],
    ["ring-off-center", "knocked"],
    ["ring-dirty", "built"],
  ],
};

/** What the holder answers. */
export const answerTo = (question: Question, conditions: readonly Condition[]): Answer =>
  TELLS[question].find(([condition]) => conditions.includes(condition))?.[1] ?? "nothing";
