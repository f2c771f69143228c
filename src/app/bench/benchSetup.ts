import type { Help } from "../../dialing/advice";
import type { AttemptStart } from "../../dialing/attemptStart";
import type { DialWeight } from "../../dialing/dialFeel";
import { drawCombination } from "../../drill/drawCombination";
import type { Combination } from "../../lock/combination";
import type { Profile } from "../../lock/profile";
import { WheelPack } from "../../lock/wheelPack";
import type { Chance } from "../../statistics/chance";

/** Where a combination comes from: the one the training lock is set to, one drawn by its rules, or the trainee's own. */
export type CombinationSource = "as-set" | "drawn" | "own";

/** What a bench is set up for. */
export interface BenchSetup {
  readonly profile: Profile;
  readonly source: CombinationSource;
  readonly combination: Combination;
  readonly help: Help;
  readonly dial: DialWeight;
}

/** The combination a profile comes with, or one drawn by its rules where it comes with none. */
export function combinationAsSet(profile: Profile, chance: Chance): Combination {
  return profile.asSet ?? drawCombination(profile, chance);
}

/**
 * A lock that somebody has spun off: the dial on a whole graduation, the wheels anywhere.
 *
 * Whole graduations let keys and buttons reach every number exactly.
 */
export function spunOffStart(profile: Profile, combination: Combination, chance: Chance): AttemptStart {
  const dial = Math.floor(chance() * profile.graduations);
  if (profile.kind !== "wheel-pack") return { dial };
  const slack = profile.wheelPack.freePlay.map((play) => Math.floor(chance() * (play + 1)));
  // Wheels that stand true by chance have not been spun off.
  const isOpen = new WheelPack(profile, combination, { dial, slack, engagedAt: null }).isAligned();
  return isOpen ? spunOffStart(profile, combination, chance) : { dial, slack };
}
