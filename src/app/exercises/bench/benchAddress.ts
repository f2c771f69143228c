import type { Help } from "../../../dialing/advice";
import { DIAL_WEIGHTS } from "../../../dialing/hand/dialFeel";
import { combinationProblem } from "../../../lock/combination";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import { type Chance, seededChance } from "../../../statistics/chance";
import { fitOf, fitQuery, weightOf } from "../../hand/dial/dialAddress";
import { combinationSentence } from "../../hand/readOwn";
import { type BenchSetup, combinationAsSet } from "./benchSetup";

const HELPS: readonly Help[] = ["full", "counts", "silent"];

/** What a page address asks the bench to be set up for. */
export interface BenchAddress {
  readonly setup: BenchSetup;
  readonly chance: Chance;
  /** What is wrong with the address, where, and what the bench does instead: a sentence or two each. */
  readonly problems: readonly string[];
}

/**
 * Reads a bench address such as `#/bench?profile=two-wheel&combination=74-37&help=counts&seed=5`.
 *
 * Every part may be left out; a part that makes no sense is left out too, and the page says so.
 *
 * @param query - the part after the question mark
 * @param defaults - help level to use, and a seed for a bench that asks for none
 */
export function benchAddress(
  query: URLSearchParams,
  defaults: { readonly help: Help; readonly seed: number },
): BenchAddress {
  const profile = SHIPPED_PROFILES.find(({ id }) => id === query.get("profile")) ?? SHIPPED_PROFILES[0];
  const seed = Number(query.get("seed") ?? defaults.seed);
  const chance = seededChance(Number.isFinite(seed) ? seed : defaults.seed);
  const help = HELPS.find((one) => one === query.get("help")) ?? defaults.help;
  const dial = weightOf(query);
  const problems = [
    ...unknown(query, "profile", "lock", profile.title, [profile.id]),
    ...unknown(query, "help", "help", help, HELPS),
    ...unknown(query, "dial", "dial", dial, DIAL_WEIGHTS),
    ...(Number.isFinite(seed)
      ? []
      : [
          `The address asks for the seed "${query.get("seed")}", which is not a number. The bench uses one of its own.`,
        ]),
  ];
  const fit = fitOf(query, problems);
  const own = ownCombination(profile, query.get("combination"), problems);
  const setup: BenchSetup =
    own === null
      ? { profile, source: "as-set", combination: combinationAsSet(profile, chance), help, dial, fit }
      : { profile, source: "own", combination: own, help, dial, fit };
  return { setup, chance, problems };
}

/** Names that a bench address may have, those to type first first. */
const SETTINGS = [
  "profile",
  "combination",
  "help",
  "dial",
  "index",
  "play",
  "keyed",
  "round",
  "catch",
  "seed",
  "measure",
  "from",
];
const TYPED = SETTINGS.slice(0, -2);

/** What to say of each name in a bench address that the bench does not know, such as a misspelled one. */
export const unknownSettings = (query: URLSearchParams): readonly string[] =>
  [...new Set(query.keys())]
    .filter((name) => !SETTINGS.includes(name))
    .map(
      (name) =>
        `The address has “${name}”, which is not a setting of the bench. Use ${TYPED.slice(0, -1).join(", ")} or ${TYPED.at(-1)}.`,
    );

/** What to say of a part of the address that asks for something there is not. */
function unknown(query: URLSearchParams, part: string, what: string, used: string, known: readonly string[]): string[] {
  const asked = query.get(part);
  if (asked === null || known.includes(asked)) return [];
  const choices = known.length > 1 ? ` Write ${known.slice(0, -1).join(", ")} or ${known.at(-1)}.` : "";
  return [`The address asks for the ${what} "${asked}". There is none; the bench uses "${used}".${choices}`];
}

/** The address that sets a bench up like this one; null for a lock that is not shipped. */
export function addressOf({ profile, source, combination, help, dial, fit }: BenchSetup): string | null {
  if (!SHIPPED_PROFILES.includes(profile)) return null;
  const numbers = source === "as-set" ? "" : `&combination=${combination.join("-")}`;
  const weight = dial === "usual" ? "" : `&dial=${dial}`;
  const fitted = fit === undefined ? "" : fitQuery(fit);
  return `#/bench?profile=${profile.id}${numbers}&help=${help}${weight}${fitted}`;
}

function ownCombination(profile: BenchSetup["profile"], text: string | null, problems: string[]) {
  if (text === null) return null;
  const numbers = text.split("-").map((part) => (part === "" ? Number.NaN : Number(part)));
  const problem = combinationProblem(profile, numbers);
  if (problem === null) return numbers;
  const why = combinationSentence(problem);
  problems.push(`The address asks for the combination "${text}". ${why} The bench uses the combination as set.`);
  return null;
}
