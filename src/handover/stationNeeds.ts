import type { Sheet, Station, TroubleStation } from "../drill/sheet/sheet";
import { stationProfile } from "../drill/sheet/stationProfile";
import type { Profile } from "../lock/profile";
import { canBeChanged } from "./change/changeProfile";
import { kindsFor } from "./trouble/drawTrouble";
import { TROUBLE_KINDS } from "./trouble/trouble";

/** What of a station no exercise can be set up for, and the field that says it. */
export interface StationNeed {
  readonly field: "pool" | "profile";
  /** A sentence without its end. */
  readonly says: string;
}

function poolNeed({ pool = TROUBLE_KINDS }: TroubleStation, profile: Profile): StationNeed | null {
  const unknown = pool.find((id) => !TROUBLE_KINDS.some((kind) => kind === id));
  if (unknown !== undefined) {
    return { field: "pool", says: `"${unknown}" is not a known defect; use ${TROUBLE_KINDS.join(", ")}` };
  }
  const fitting = kindsFor(profile);
  if (fitting.some((kind) => pool.includes(kind))) return null;
  return { field: "pool", says: `${profile.title} can have none of these defects; use ${fitting.join(", ")}` };
}

/**
 * Why no exercise can be set up for a station, or null where one can.
 *
 * A sheet is sound without this: which conditions there are, and which lock takes a key, the handover layer knows.
 */
export function stationNeed(station: Station): StationNeed | null {
  const profile = stationProfile(station);
  if (station.kind === "trouble") return poolNeed(station, profile);
  if (station.kind !== "handover" || canBeChanged(profile)) return null;
  return {
    field: "profile",
    says: `the combination of ${profile.title} cannot be changed, so it is never handed over; take another lock`,
  };
}

/** Why a sheet cannot be sat, a sentence without its end that names the station; null where it can. */
export function sittingProblem({ stations }: Pick<Sheet, "stations">): string | null {
  for (const station of stations) {
    const need = stationNeed(station);
    if (need !== null) return `station "${station.title ?? station.id}": ${need.says}`;
  }
  return null;
}
