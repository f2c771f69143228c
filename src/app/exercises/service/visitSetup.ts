import type { Help } from "../../../dialing/advice";
import type { Profile } from "../../../lock/profile";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import { HELP_LEVELS } from "../../../records/attemptRecord";
import type { Chance } from "../../../statistics/chance";
import { drawSeed } from "../../../statistics/drawSeed";

/** Which lock is visited, what the years did to it, and how much help there is. */
export interface VisitSetup {
  /** Id of a shipped lock, or "any". */
  readonly lock: string;
  /** A whole number from 0; fixes what is wrong with the lock, its papers, and what each instrument shows. */
  readonly seed: number;
  readonly help: Help;
}

const isShipped = (asked: string) => SHIPPED_PROFILES.some(({ id }) => id === asked);

/** What an address such as `#/fitting?view=service&profile=two-wheel&seed=12&help=silent` asks for. */
export function visitSetupOf(query: URLSearchParams, chance: Chance): VisitSetup {
  const asked = query.get("profile") ?? "any";
  const seed = Number(query.get("seed") ?? Number.NaN);
  return {
    lock: isShipped(asked) ? asked : "any",
    seed: Number.isSafeInteger(seed) && seed >= 0 ? seed : drawSeed(chance),
    help: HELP_LEVELS.find((one) => one === query.get("help")) ?? "full",
  };
}

/** The lock that a setup comes to: of any lock, one by its seed. */
export const visitedProfile = ({ lock, seed }: Pick<VisitSetup, "lock" | "seed">): Profile =>
  SHIPPED_PROFILES.find(({ id }) => id === lock) ??
  SHIPPED_PROFILES[seed % SHIPPED_PROFILES.length] ??
  SHIPPED_PROFILES[0];
