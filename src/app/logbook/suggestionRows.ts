import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import type { AttemptRecord } from "../../logbook/attemptRecord";
import type { Suggestion } from "../../logbook/whatNext";
import { HELP_WORDS, shortTitle } from "./attemptRows";

/** One way to go on, ready to show. */
export interface SuggestionRow {
  readonly key: string;
  readonly title: string;
  readonly reason: string;
  /** Benches that are set up for it; none for a lock that is not shipped. */
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

const redoLink = ({ profileId, help, combination }: AttemptRecord) => ({
  address: benchAddress(profileId, help, combination),
  label: combination.join("–"),
});

/** A suggestion, with the benches that are set up for it. */
export function suggestionRow({ kind, skill, reason, help, misses }: Suggestion): SuggestionRow {
  const profile = SHIPPED_PROFILES.find(({ id }) => id === skill.profileId) ?? null;
  const practice = { address: benchAddress(skill.profileId, help, null), label: `To the bench, ${HELP_WORDS[help]}` };
  const links = kind === "redo-misses" ? misses.slice(0, MOST_LINKS).map(redoLink) : [practice];
  return {
    key: `${kind} ${skill.profileId} ${skill.exercise}`,
    title: `${TITLES[kind]}: ${shortTitle(profile, skill.profileId)}`,
    reason,
    links: profile === null ? [] : links,
  };
}
