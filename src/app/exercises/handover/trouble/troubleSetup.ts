import type { Help } from "../../../../dialing/advice";
import { drawTrouble, kindsFor } from "../../../../handover/trouble/drawTrouble";
import { TROUBLE_KINDS, type TroubleKind, type TroubleTask } from "../../../../handover/trouble/trouble";
import type { Profile } from "../../../../lock/profile";
import { SHIPPED_PROFILES } from "../../../../lock/shippedProfiles";
import type { Chance } from "../../../../statistics/chance";
import { drawSeed } from "../../../../statistics/drawSeed";

/** What the trainee has chosen. */
export interface TroubleSetup {
  /** Id of a lock, or "any". */
  readonly lock: string;
  /** Conditions to draw from; at least one fits the lock. */
  readonly pool: readonly TroubleKind[];
  readonly seed: number;
  readonly help: Help;
}

/** The locks that a choice stands for. */
export function locksOf(lock: string): readonly Profile[] {
  const found = SHIPPED_PROFILES.filter(({ id }) => id === lock);
  return found.length > 0 ? found : SHIPPED_PROFILES;
}

/** The conditions that some lock of a choice can have. */
export function kindsOf(lock: string): readonly TroubleKind[] {
  const known = new Set(locksOf(lock).flatMap(kindsFor));
  return TROUBLE_KINDS.filter((kind) => known.has(kind));
}

/** The exercise of a setup. */
export function taskOf({ lock, pool, seed }: TroubleSetup): TroubleTask {
  const fitting = locksOf(lock).filter((profile) => kindsFor(profile).some((kind) => pool.includes(kind)));
  const profile = fitting[seed % Math.max(1, fitting.length)] ?? locksOf(lock)[0];
  if (profile === undefined) throw new Error("no lock is shipped");
  return drawTrouble(profile, pool, seed);
}

/** What an address such as `#/handover?view=trouble&profile=two-wheel&seed=12&help=silent` asks for. */
export function setupOf(query: URLSearchParams, chance: Chance): TroubleSetup {
  const asked = query.get("profile") ?? "any";
  const lock = SHIPPED_PROFILES.some(({ id }) => id === asked) ? asked : "any";
  const kinds = kindsOf(lock);
  const wanted = (query.get("pool") ?? "").split(",");
  const pool = kinds.filter((kind) => wanted.includes(kind));
  const seed = Number(query.get("seed") ?? Number.NaN);
  return {
    lock,
    pool: pool.length > 0 ? pool : kinds,
    seed: Number.isInteger(seed) && seed >= 0 ? seed : drawSeed(chance),
    help: query.get("help") === "silent" ? "silent" : "full",
  };
}
