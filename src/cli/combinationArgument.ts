import { type Combination, parseCombination } from "../lock/combination";
import type { Profile } from "../lock/profile";

/**
 * A combination given on the command line, such as 38-71-26.
 *
 * @throws {LockError} for one that cannot be dialed
 */
export function combinationArgument(profile: Profile, text: string): Combination {
  return parseCombination(profile, text.split(/[-,\s]+/).map(Number));
}
