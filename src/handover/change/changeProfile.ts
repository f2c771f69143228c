import type { ChangingParameters, Profile, WheelPackProfile } from "../../lock/profile";

/** A wheel pack whose combination is changed with a key. */
export type KeyedProfile = WheelPackProfile & { readonly changing: ChangingParameters };

/** Whether a lock takes a change key. */
export function takesKey(profile: Profile): profile is KeyedProfile {
  return profile.kind === "wheel-pack" && profile.changing !== undefined;
}

/** Whether the trainee can change the combination of a lock: with a key, or on the dial of an encoder lock. */
export function canBeChanged(profile: Profile): boolean {
  return profile.kind === "dial-encoder" || takesKey(profile);
}
