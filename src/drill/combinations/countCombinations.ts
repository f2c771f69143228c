import type { CombinationRules, Profile } from "../../lock/profile";
import { combinationProblem } from "../combinationWords";
import { DrillError } from "../drillError";
import { combinationSpace, countingWork } from "./combinationSpace";

/** Work that counting may be: about a second on a slow machine. Every shipped lock, with all rules on, is far below. */
export const MOST_COUNTING_WORK = 20_000_000;

/**
 * How many whole-number combinations rules allow on a lock, exactly.
 *
 * 1,000,000 with no rules on three wheels of 100: MIL-HDBK-1013/8 (1989), section 2, item e.
 *
 * @param rules - the profile's own, if left out
 * @param most - work it may be, see `countingWork`
 * @throws {DrillError} `not-counted` where it would be more; nothing has been counted then
 */
export function countCombinations(
  profile: Profile,
  rules: CombinationRules = profile.combinationRules,
  most: number = MOST_COUNTING_WORK,
): number {
  const { graduations, procedure } = profile;
  if (countingWork(rules, graduations, procedure.length) > most) {
    throw new DrillError(combinationProblem("not-counted", [], { numbers: procedure.length, graduations }));
  }
  return combinationSpace(rules, graduations, procedure.length).count;
}
