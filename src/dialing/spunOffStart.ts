import type { Combination } from "../lock/combination";
import type { Profile } from "../lock/profile";
import { WheelPack } from "../lock/wheelPack";
import type { AttemptStart } from "./attemptStart";

/**
 * A lock that somebody has spun off: the dial on a whole graduation, the wheels anywhere.
 *
 * Whole graduations let keys and buttons reach every number exactly.
 *
 * @param chance - gives numbers in [0, 1)
 */
export function spunOffStart(profile: Profile, combination: Combination, chance: () => number): AttemptStart {
  const dial = Math.floor(chance() * profile.graduations);
  if (profile.kind !== "wheel-pack") return { dial };
  const slack = profile.wheelPack.freePlay.map((play) => Math.floor(chance() * (play + 1)));
  // Wheels that stand true by chance have not been spun off.
  const isOpen = new WheelPack(profile, combination, { dial, slack, engagedAt: null }).isAligned();
  return isOpen ? spunOffStart(profile, combination, chance) : { dial, slack };
}
