import type { Help } from "../../../dialing/advice";
import type { DialWeight } from "../../../dialing/hand/dialFeel";
import { drawCombination } from "../../../drill/combinations/drawCombination";
import type { Combination } from "../../../lock/combination";
import type { Profile } from "../../../lock/profile";
import type { Chance } from "../../../statistics/chance";
import type { DialFit } from "../../hand/dial/dialAddress";

/** Where a combination comes from: the one the training lock is set to, one drawn by its rules, or the trainee's own. */
export type CombinationSource = "as-set" | "drawn" | "own";

/** What a bench is set up for. */
export interface BenchSetup {
  readonly profile: Profile;
  readonly source: CombinationSource;
  readonly combination: Combination;
  readonly help: Help;
  readonly dial: DialWeight;
  /** How the index stands and the cam follows; both true where left out. */
  readonly fit?: DialFit | undefined;
}

/** The combination a profile comes with, or one drawn by its rules where it comes with none. */
export function combinationAsSet(profile: Profile, chance: Chance): Combination {
  return profile.asSet ?? drawCombination(profile, chance);
}
