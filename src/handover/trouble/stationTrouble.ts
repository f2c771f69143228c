import type { TroubleStation } from "../../drill/sheet/sheet";
import type { Profile } from "../../lock/profile";
import type { Chance } from "../../statistics/chance";
import { drawTrouble } from "./drawTrouble";
import { TROUBLE_KINDS, type TroubleKind, type TroubleTask } from "./trouble";

const SEEDS = 2 ** 31;

/** The exercise of one try at a station, and what it was drawn by. */
export interface StationTrouble {
  readonly pool: readonly TroubleKind[];
  readonly seed: number;
  readonly task: TroubleTask;
}

/**
 * The exercise of one try, by the chance of that try alone: the same when its record is checked.
 *
 * @throws {TroubleError} when none of the station's defects fits the lock
 * @throws {DrillError} `no-combination` when the rules of the lock leave no number
 */
export function stationTrouble(profile: Profile, { pool: ids }: TroubleStation, chance: Chance): StationTrouble {
  const pool = TROUBLE_KINDS.filter((kind) => ids === undefined || ids.includes(kind));
  const seed = Math.floor(chance() * SEEDS);
  return { pool, seed, task: drawTrouble(profile, pool, seed) };
}
