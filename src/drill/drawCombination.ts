import type { Combination } from "../lock/combination";
import type { CombinationRules, Profile } from "../lock/profile";
import type { Chance } from "../statistics/chance";
import { explain } from "./combinationRules";
import { DrillError } from "./drillError";

/** Tries before the rules are taken to allow nothing; the strictest shipped rules pass about one draw in four. */
const TRIES = 100_000;

/**
 * A combination drawn uniformly among those that the rules allow, by rejection.
 *
 * @throws {DrillError} `no-combination` when the rules seem to allow none
 */
export function drawCombination(
  profile: Profile,
  chance: Chance,
  rules: CombinationRules = profile.combinationRules,
): Combination {
  const { graduations, procedure } = profile;
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const numbers = procedure.map(() => Math.floor(chance() * graduations));
    if (explain(numbers, rules, graduations).length === 0) return numbers;
  }
  throw new DrillError("no-combination", `the rules leave no combination for ${profile.id}; ease one of them`);
}
