import dialEncoder from "../../shared/profiles/dial-encoder.json" with { type: "json" };
import fixedPin from "../../shared/profiles/fixed-pin.json" with { type: "json" };
import fourWheel from "../../shared/profiles/four-wheel.json" with { type: "json" };
import smallThreeWheel from "../../shared/profiles/small-three-wheel.json" with { type: "json" };
import threeWheel from "../../shared/profiles/three-wheel.json" with { type: "json" };
import twoWheel from "../../shared/profiles/two-wheel.json" with { type: "json" };
import { LockError } from "./lockError";
import { lockProblem } from "./lockWords";
import type { Profile } from "./profile";

/** Of a file with its source: what a profile is. The tests read each file by the schema, which no page has to load for it. */
const shipped = ({ source: _, ...profile }: { readonly source: string }) => profile as Profile;

/** The generic families of lock that come with the trainer, easiest to explain first. */
export const SHIPPED_PROFILES: readonly [Profile, ...Profile[]] = [
  shipped(threeWheel),
  ...[fourWheel, twoWheel, smallThreeWheel, fixedPin, dialEncoder].map(shipped),
];

/**
 * A shipped profile by its id.
 *
 * @throws {LockError} `unknown-profile`, naming those there are
 */
export function shippedProfile(id: string): Profile {
  const found = SHIPPED_PROFILES.find((profile) => profile.id === id);
  if (found !== undefined) return found;
  const known = SHIPPED_PROFILES.map((profile) => profile.id).join(", ");
  throw new LockError(lockProblem("unknown-profile", [], { id, known }));
}
