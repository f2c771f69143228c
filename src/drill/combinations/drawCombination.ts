import type { Combination } from "../../lock/combination";
import type { CombinationRules, Profile } from "../../lock/profile";
import type { Chance } from "../../statistics/chance";
import { combinationProblem } from "../combinationWords";
import { DrillError } from "../drillError";
import { explain } from "./combinationRules";
import { type CombinationSpace, combinationSpace } from "./combinationSpace";

/** Draws thrown away before the space is counted out; the strictest shipped rules pass about one draw in four. */
const TRIES = 500;

/**
 * Something that draws combinations uniformly among those that rules allow.
 *
 * It tries numbers at random first, which is quick under usual rules. Where hundreds of tries break a rule, it counts
 * the allowed ones and takes one by its rank. Both ways are uniform, so both together are.
 *
 * @param rules - the profile's own, if left out
 * @returns gives a combination at every call; throws {DrillError} `no-combination` when the rules allow none
 */
export function combinationDrawer(
  profile: Profile,
  rules: CombinationRules = profile.combinationRules,
): (chance: Chance) => Combination {
  const { graduations, procedure } = profile;
  let space: CombinationSpace | undefined;
  return (chance) => {
    for (let attempt = 0; attempt < TRIES && space === undefined; attempt++) {
      const numbers = procedure.map(() => Math.floor(chance() * graduations));
      if (explain(numbers, rules, graduations).length === 0) return numbers;
    }
    space ??= combinationSpace(rules, graduations, procedure.length);
    if (space.count > 0) return space.draw(chance);
    throw new DrillError(combinationProblem("no-combination", [], { lock: profile.id }));
  };
}

/**
 * A combination drawn uniformly among those that the rules allow; see `combinationDrawer`.
 *
 * @throws {DrillError} `no-combination` when the rules allow none
 */
export function drawCombination(
  profile: Profile,
  chance: Chance,
  rules: CombinationRules = profile.combinationRules,
): Combination {
  return combinationDrawer(profile, rules)(chance);
}
