import type { CombinationRules } from "../../lock/profile";
import { isAmong } from "./combinationRules";
import { NumberMemory } from "./numberMemory";

/** The numbers of a dial, and what the rules say of each by itself and of a whole combination. */
export interface NumberField {
  /** Graduations in one turn of the dial. */
  readonly perTurn: number;
  /** Numbers of a combination. */
  readonly wheels: number;
  /** Which numbers may be taken at all, by number. */
  readonly isAllowed: readonly boolean[];
  /** Which of them may come last, by number. */
  readonly isAllowedLast: readonly boolean[];
  /** Least distance between every two numbers; 0 where a number may come twice. */
  readonly separation: number;
  /** Whether that distance goes the shorter way round the dial. */
  readonly isCircular: boolean;
  readonly memory: NumberMemory;
}

/**
 * Reads rules for one dial.
 *
 * @param perTurn - graduations in one turn, an integer
 * @param wheels - numbers of a combination
 */
export function numberField(rules: CombinationRules, perTurn: number, wheels: number): NumberField {
  const isTenth = (mark: number) => rules.multiplesOfTen === "numbers" && mark % 10 === 0;
  const isAllowed = Array.from(
    { length: perTurn },
    (_, mark) => !isTenth(mark) && !isAmong(mark, rules.excluded ?? []),
  );
  const least = rules.multiplesOfTen === "differences" ? 1 : 0;
  return {
    perTurn,
    wheels,
    isAllowed,
    isAllowedLast: isAllowed.map((is, mark) => is && !isAmong(mark, rules.excludedLast ?? [])),
    // Marks lie whole graduations apart, so half a graduation of separation asks for a whole one.
    // No two numbers are a whole turn apart: a wider rule allows no more and no less than that one.
    separation: Math.min(perTurn, Math.max(least, Math.ceil(rules.minSeparation ?? 0))),
    isCircular: rules.circular === true,
    memory: new NumberMemory(rules, perTurn, wheels),
  };
}
