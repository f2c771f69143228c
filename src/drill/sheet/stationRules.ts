import type { Profile } from "../../lock/profile";
import { profileRules, usualRules, type ZeroingRules } from "../../zeroing/zeroingRules";
import type { ZeroingStation } from "./sheet";

const lockRules = (profile: Profile): ZeroingRules =>
  profile.kind === "dial-encoder" ? profileRules(profile) : usualRules(profile.graduations);

/** Rules of a zeroing station: those of its lock, and over them what the sheet asks for. */
export function stationRules({ readings, tolerance }: ZeroingStation, profile: Profile): ZeroingRules {
  const rules = lockRules(profile);
  const wanted = readings ?? rules.wanted;
  return { ...rules, wanted, most: Math.max(rules.most, wanted), tolerance: tolerance ?? rules.tolerance };
}
