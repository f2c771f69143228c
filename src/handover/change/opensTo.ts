import { Attempt } from "../../dialing/attempt";
import { idealMotion } from "../../dialing/idealMotion";
import type { Combination } from "../../lock/combination";
import type { Profile } from "../../lock/profile";

/**
 * Whether a perfect hand that dials one combination opens a lock set to another: found by dialing it.
 *
 * @param setTo - what the lock is set to; null for a spoiled pack, which opens to nothing
 * @throws {LockError} for one that cannot be dialed
 */
export function opensTo(profile: Profile, setTo: Combination | null, dialed: Combination): boolean {
  if (setTo === null) return false;
  const attempt = new Attempt(profile, dialed, { dial: 0, setTo });
  const [, ...stops] = idealMotion(profile, dialed, 0, [], 1);
  for (const stop of stops) attempt.turnBy(stop - attempt.dial);
  return attempt.opened;
}
