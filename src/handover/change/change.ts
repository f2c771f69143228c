import type { AttemptStart } from "../../dialing/attemptStart";
import type { Combination } from "../../lock/combination";
import type { Profile } from "../../lock/profile";
import { takesKey } from "./changeProfile";
import { EncoderChange } from "./encoderChange";
import { PackChange } from "./packChange";

/** A change of either kind. */
export type Change = PackChange | EncoderChange;

/**
 * Begins a change in the way that a lock takes it.
 *
 * @param present - what the lock is set to, and known to be
 * @param start - where it stands, its bolt thrown
 * @throws {LockError} for a combination or a start that cannot be
 * @throws {TypeError} where a lock cannot be changed
 */
export function beginChange(
  profile: Profile,
  present: Combination,
  wanted: Combination,
  { dial, slack = [] }: Pick<AttemptStart, "dial" | "slack">,
): Change {
  if (profile.kind === "dial-encoder") return new EncoderChange(profile, present, wanted, { dial });
  if (takesKey(profile)) return new PackChange(profile, present, wanted, { dial, slack, engagedAt: null });
  throw new TypeError(`${profile.id} takes no change key`);
}
