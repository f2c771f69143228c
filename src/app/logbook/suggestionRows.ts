import type { Sheet } from "../../drill/sheet/sheet";
import { sittingPlan } from "../../drill/sittingPlan";
import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import type { AttemptRecord } from "../../logbook/attemptRecord";
import { redoSheet } from "../../logbook/practiceSheet";
import type { Suggestion } from "../../logbook/whatNext";
import { linkOf } from "../sheets/sheetsAddress";
import { HELP_WORDS, shortTitle } from "./attemptRows";

/** One way to go on, ready to show. */
export interface SuggestionRow {
  readonly key: string;
  readonly title: string;
  readonly reason: string;
  /** Benches and runs that are set up for it; none for a lock that is not known. */
  readonly links: readonly { readonly address: string; readonly label: string }[];
}

const TITLES: Readonly<Record<Suggestion["kind"], string>> = {
  "redo-misses": "Redo the misses",
  "go-on": "Go on",
  refresh: "Refresh",
};

/** Misses that are offered at once; the rest come when these are made good. */
const MOST_LINKS = 5;

const benchAddress = (profileId: string, help: string, combination: readonly number[] | null) =>
  `#/bench?profile=${profileId}${combination === null ? "" : `&combination=${combination.join("-")}`}&help=${help}`;

const BENCH_DIALS: Readonly<Record<string, string>> = {
  "": "",
  "heavy dial": "&dial=heavy",
  "light dial": "&dial=light",
};

/** The bench set up as a miss was made; none where the bench has no such settings. */
function redoLink({ profileId, help, combination, conditions, exercise }: AttemptRecord) {
  const dial = BENCH_DIALS[conditions.join("; ")];
  if (dial === undefined || exercise !== "open") return [];
  return [{ address: `${benchAddress(profileId, help, combination)}${dial}`, label: combination.join("–") }];
}

/** A run of tries by a sheet; none where there is no such sheet, or it is too large for a link. */
export function runLink(sheet: Sheet | null, label: (tries: number) => string): SuggestionRow["links"] {
  const link = sheet === null ? null : linkOf(sheet, "sittings");
  if (sheet === null || link === null || "says" in link) return [];
  return [{ address: link.hash, label: label(sittingPlan(sheet).tries) }];
}

const redoLinks = (misses: readonly AttemptRecord[], isShipped: boolean) => [
  ...(isShipped ? misses.flatMap(redoLink).slice(0, MOST_LINKS) : []),
  ...runLink(redoSheet(misses), (tries) => (tries === 1 ? "As a run, 1 try" : `In one run, ${tries} tries`)),
];

/** A suggestion, with the benches that are set up for it. */
export function suggestionRow({ kind, skill, reason, help, misses }: Suggestion): SuggestionRow {
  const profile = SHIPPED_PROFILES.find(({ id }) => id === skill.profileId) ?? null;
  const practice = { address: benchAddress(skill.profileId, help, null), label: `To the bench, ${HELP_WORDS[help]}` };
  const isShipped = profile !== null;
  return {
    key: `${kind} ${skill.profileId} ${skill.exercise}`,
    title: `${TITLES[kind]}: ${shortTitle(profile, skill.profileId)}`,
    reason,
    links: kind === "redo-misses" ? redoLinks(misses, isShipped) : isShipped ? [practice] : [],
  };
}
