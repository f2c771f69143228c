import type { CombinationRules, Profile } from "../lock/profile";
import { combinationSpace } from "./combinationSpace/combinationSpace";

/**
 * How many whole-number combinations rules allow on a lock, exactly.
 *
 * 1,000,000 with no rules on three wheels of 100: MIL-HDBK-1013/8 (1989), section 2, item e.
 *
 * @param rules - the profile's own, if left out
 */
export function countCombinations(profile: Profile, rules: CombinationRules = profile.combinationRules): number {
  return combinationSpace(rules, profile.graduations, profile.procedure.length).count;
}
