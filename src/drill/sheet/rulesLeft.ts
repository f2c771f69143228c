import type { Combination } from "../../lock/combination";
import type { CombinationRules, Profile } from "../../lock/profile";
import { seededChance } from "../../statistics/chance";
import { canonicalJson } from "../canonicalJson";
import { explain } from "../combinations/combinationRules";
import { countCombinations } from "../combinations/countCombinations";
import { DrillError } from "../drillError";

/** How many combinations rules leave, as far as a sheet needs to know. */
export type RulesLeft = "none" | "one" | "several";

/** Tries before the combinations are counted out. Any seed will do: what is found is found. */
const SAMPLES = 3000;
const SEED = 1;

/** Answers that are remembered, so that a sheet of forty alike stations asks once and typing does not ask again. */
const MOST_KNOWN = 64;
const known = new Map<string, RulesLeft | DrillError>();

/** Whether the numbers cannot even be laid out on the dial with the distance asked between them. */
function isTooWide({ minSeparation = 0, circular = false }: CombinationRules, perTurn: number, wheels: number) {
  const room = circular ? perTurn : perTurn - 1;
  return minSeparation * (circular ? wheels : wheels - 1) > room;
}

function hasTwo(rules: CombinationRules, perTurn: number, wheels: number): boolean {
  const chance = seededChance(SEED);
  let first: Combination | undefined;
  for (let k = 0; k < SAMPLES; k++) {
    const numbers = Array.from({ length: wheels }, () => Math.floor(chance() * perTurn));
    if (explain(numbers, rules, perTurn).length > 0) continue;
    if (first !== undefined && first.join() !== numbers.join()) return true;
    first = numbers;
  }
  return false;
}

function found(profile: Profile, rules: CombinationRules): RulesLeft {
  const { graduations, procedure } = profile;
  if (isTooWide(rules, graduations, procedure.length)) return "none";
  if (hasTwo(rules, graduations, procedure.length)) return "several";
  const count = countCombinations(profile, rules);
  if (count === 0) return "none";
  return count === 1 ? "one" : "several";
}

function looked(profile: Profile, rules: CombinationRules): RulesLeft | DrillError {
  try {
    return found(profile, rules);
  } catch (error) {
    if (error instanceof DrillError) return error;
    throw error;
  }
}

/**
 * Whether rules leave no combination on a lock, one, or several.
 *
 * Draws at random first: two that fit are enough, whatever the count is. Only where hardly anything fits it counts, and
 * once for each set of rules.
 *
 * @throws {DrillError} where the rules are too involved to be counted
 */
export function rulesLeft(profile: Profile, rules: CombinationRules = profile.combinationRules): RulesLeft {
  const key = canonicalJson([rules, profile.graduations, profile.procedure.length]);
  const answer = known.get(key) ?? looked(profile, rules);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(key, answer);
  if (answer instanceof DrillError) throw answer;
  return answer;
}
