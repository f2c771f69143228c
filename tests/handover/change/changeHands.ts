import { drawLength } from "../../../src/dialing/fault";
import { idealMotion } from "../../../src/dialing/idealMotion";
import type { KeyedProfile } from "../../../src/handover/change/changeProfile";
import { takesKey } from "../../../src/handover/change/changeProfile";
import type { Combination } from "../../../src/lock/combination";
import type { Graduations } from "../../../src/lock/dial";
import type { Profile } from "../../../src/lock/profile";
import { SHIPPED_PROFILES } from "../../../src/lock/shippedProfiles";

export const KEYED: readonly KeyedProfile[] = SHIPPED_PROFILES.filter(takesKey);

/** Anything that has a dial to turn. */
export interface Turned {
  readonly dial: Graduations;
  turnBy(by: Graduations): unknown;
}

/** Dials numbers to an index that stands so far left of the opening index; no draw. */
export function dialTo(
  lock: Turned,
  profile: Profile,
  numbers: Combination,
  index: Graduations,
  stopErrors: readonly Graduations[] = [],
): void {
  const stops = idealMotion(profile, numbers, lock.dial - index, stopErrors).slice(1, -1);
  for (const stop of stops) lock.turnBy(stop + index - lock.dial);
}

/** Dials numbers to the opening index and draws the bolt. */
export function openBy(lock: Turned, profile: Profile, numbers: Combination): void {
  dialTo(lock, profile, numbers, 0);
  const sign = profile.draw.turn === "left" ? 1 : -1;
  lock.turnBy(sign * (drawLength(profile, lock.dial) + 1));
}
