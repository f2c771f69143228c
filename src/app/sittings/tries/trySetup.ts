import { conditionsAt, type TryConditions } from "../../../drill/sheet/conditionsAt";
import type { PlannedTry } from "../../../drill/sheet/planTries";
import type { Condition, Sheet, Station } from "../../../drill/sheet/sheet";
import { stationProfile } from "../../../drill/sheet/stationProfile";
import { tryChance } from "../../../drill/sitting/tryChance";
import type { Profile, Range } from "../../../lock/profile";
import type { Chance } from "../../../statistics/chance";
import { type ConditionRanges, profileRanges, USUAL_RANGES } from "../../../zeroing/zeroLock";

/** One try, ready to be put under the hand. */
export interface TrySetup {
  readonly plan: PlannedTry;
  readonly station: Station;
  readonly profile: Profile;
  readonly conditions: TryConditions;
  /** Of this try alone, so that a try after a reload is the one it would have been. */
  readonly chance: Chance;
  /** How often it was begun again. */
  readonly begunAgain: number;
}

/** What a try needs, from its place in the plan. @param begunAgain - how often it was begun again */
export function trySetup(sheet: Sheet, plan: PlannedTry, seed: number, index: number, begunAgain = 0): TrySetup {
  const station = sheet.stations[plan.station];
  if (station === undefined) throw new Error(`the sheet has no station ${plan.station}`);
  return {
    plan,
    station,
    profile: stationProfile(station),
    conditions: conditionsAt(station, plan.repetition),
    chance: tryChance(seed, index, begunAgain),
    begunAgain,
  };
}

const exactly = (value: number): Range => [value, value];

/** What is hidden in the lock of a zeroing try: what the sheet injects, and else what its lock may have. */
export function stationRanges({ station, plan, profile, conditions }: TrySetup): ConditionRanges {
  const own = profile.kind === "dial-encoder" ? profileRanges(profile) : USUAL_RANGES;
  const holds = (kind: Condition["kind"]) =>
    (station.conditions ?? []).some((one) => one.kind === kind && (one.from ?? 1) <= plan.repetition);
  return {
    indexOffset: holds("index-offset") ? exactly(conditions.indexOffset) : own.indexOffset,
    lostMotion: holds("lost-motion") ? exactly(conditions.lostMotion) : own.lostMotion,
    noise: holds("noise") ? exactly(conditions.noise) : own.noise,
  };
}
