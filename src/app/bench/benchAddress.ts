import type { Help } from "../../dialing/advice";
import { parseCombination } from "../../lock/combination";
import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import { type Chance, seededChance } from "../../statistics/chance";
import { type BenchSetup, combinationAsSet } from "./benchSetup";

const HELPS: readonly Help[] = ["full", "counts", "silent"];

/** What a page address asks the bench to be set up for. */
export interface BenchAddress {
  readonly setup: BenchSetup;
  readonly chance: Chance;
  /** Why part of the address was passed over, or null. */
  readonly problem: string | null;
}

/**
 * Reads a bench address such as `#/bench?profile=two-wheel&combination=74-37&help=counts&seed=5`.
 *
 * Every part may be left out; a part that makes no sense is passed over and told.
 *
 * @param query - the part after the question mark
 * @param defaults - help level to use, and a seed for a bench that asks for none
 */
export function benchAddress(
  query: URLSearchParams,
  defaults: { readonly help: Help; readonly seed: number },
): BenchAddress {
  const asked = query.get("profile");
  const profile = SHIPPED_PROFILES.find(({ id }) => id === asked) ?? SHIPPED_PROFILES[0];
  if (profile === undefined) throw new Error("no profile is shipped");
  const seed = Number(query.get("seed") ?? defaults.seed);
  const chance = seededChance(Number.isFinite(seed) ? seed : defaults.seed);
  const help = HELPS.find((one) => one === query.get("help")) ?? defaults.help;
  const problems = asked === null || asked === profile.id ? [] : [`There is no lock "${asked}" here.`];
  const own = ownCombination(profile, query.get("combination"), problems);
  const setup: BenchSetup =
    own === null
      ? { profile, source: "as-set", combination: combinationAsSet(profile, chance), help }
      : { profile, source: "own", combination: own, help };
  return { setup, chance, problem: problems[0] ?? null };
}

function ownCombination(profile: BenchSetup["profile"], text: string | null, problems: string[]) {
  if (text === null) return null;
  try {
    return parseCombination(profile, text.split("-").map(Number));
  } catch (error) {
    problems.push(`The address asks for ${text}: ${error instanceof Error ? error.message : String(error)}.`);
    return null;
  }
}
