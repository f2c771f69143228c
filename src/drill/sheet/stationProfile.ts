import type { Profile } from "../../lock/profile";
import { shippedProfile } from "../../lock/shippedProfiles";
import type { Station } from "./sheet";

/**
 * The lock of a station.
 *
 * @throws {LockError} `unknown-profile`
 */
export function stationProfile({ profile }: Pick<Station, "profile">): Profile {
  return typeof profile === "string" ? shippedProfile(profile) : profile;
}
