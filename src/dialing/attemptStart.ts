import type { Combination } from "../lock/combination";
import type { Graduations } from "../lock/dial";
import type { EncoderMemory } from "../lock/dialEncoder";
import type { Profile } from "../lock/profile";
import { WheelPack } from "../lock/wheelPack";

/** Where a lock stands before the hand takes hold. */
export interface AttemptStart {
  /** Unwrapped dial position, graduations. */
  readonly dial: Graduations;
  /** Wheel packs only: how far each wheel leads its driver, wheel 1 first; all 0 where left out. */
  readonly slack?: readonly Graduations[] | undefined;
  /** Encoder locks only: tries it remembers. */
  readonly memory?: EncoderMemory | undefined;
  /** What the lock is really set to, graduations, where that is not the combination that the hand dials. */
  readonly setTo?: Combination | undefined;
}

/**
 * The wheels under a hand, where an attempt starts.
 *
 * @param combination - what opens the lock
 * @throws {LockError} for a start that cannot be
 */
export function startPack(
  profile: Profile & { kind: "wheel-pack" },
  combination: Combination,
  start: AttemptStart,
): WheelPack {
  const slack = start.slack ?? profile.wheelPack.freePlay.map(() => 0);
  return new WheelPack(profile, combination, { dial: start.dial, slack, engagedAt: null });
}
