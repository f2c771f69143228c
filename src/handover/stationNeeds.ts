import type { Sheet, Station, TroubleStation } from "../drill/sheet/sheet";
import { stationProfile } from "../drill/sheet/stationProfile";
import type { Profile } from "../lock/profile";
import type { Problem } from "../wording/problem";
import { canBeChanged } from "./change/changeProfile";
import { sheetProblem } from "./sheetWords";
import { kindsFor } from "./trouble/drawTrouble";
import { TROUBLE_KINDS } from "./trouble/trouble";

function poolNeed({ pool = TROUBLE_KINDS }: TroubleStation, profile: Profile): Problem | null {
  const unknown = pool.find((id) => !TROUBLE_KINDS.some((kind) => kind === id));
  if (unknown !== undefined) return sheetProblem("unknown-defect", ["pool"], { defect: unknown, known: TROUBLE_KINDS });
  const fitting = kindsFor(profile);
  if (fitting.some((kind) => pool.includes(kind))) return null;
  return sheetProblem("no-fitting-defect", ["pool"], { lock: profile.title, fitting });
}

/**
 * Why no exercise can be set up for a station, or null where one can.
 *
 * A sheet is sound without this: which conditions there are, and which lock takes a key, the handover layer knows.
 */
export function stationNeed(station: Station): Problem | null {
  const profile = stationProfile(station);
  if (station.kind === "trouble") return poolNeed(station, profile);
  if (station.kind !== "handover" || canBeChanged(profile)) return null;
  return sheetProblem("never-handed-over", ["profile"], { lock: profile.title });
}

/** Why a sheet cannot be sat, with the station; null where it can. */
export function sittingProblem({ stations }: Pick<Sheet, "stations">): Problem | null {
  for (const station of stations) {
    const need = stationNeed(station);
    if (need !== null) return sheetProblem("station-need", [], { station: station.title ?? station.id, need });
  }
  return null;
}
