import type { Combination } from "../lock/combination";
import type { Graduations } from "../lock/dial";
import type { Profile } from "../lock/profile";
import { WheelPack } from "../lock/wheelPack";
import type { AttemptStart } from "./attemptStart";

/** Where the dial stands once a lock has been spun off: on any whole graduation. It is the first that chance is asked for. */
export const spunOffDial = (graduations: number, chance: () => number): Graduations =>
  Math.floor(chance() * graduations);

/**
 * A lock that somebody has spun off: the dial on a whole graduation, the wheels anywhere.
 *
 * Whole graduations let keys and buttons reach every number exactly.
 *
 * @param chance - gives numbers in [0, 1)
 */
export function spunOffStart(profile: Profile, combination: Combination, chance: () => number): AttemptStart {
  const dial = spunOffDial(profile.graduations, chance);
  if (profile.kind !== "wheel-pack") return { dial };
  const slack = profile.wheelPack.freePlay.map((play) => Math.floor(chance() * (play + 1)));
  // Wheels that stand true by chance have not been spun off.
  const isOpen = new WheelPack(profile, combination, { dial, slack, engagedAt: null }).isAligned();
  return isOpen ? spunOffStart(profile, combination, chance) : { dial, slack };
}
