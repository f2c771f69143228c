import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import type { AttemptRecord } from "../../logbook/attemptRecord";
import { JOB_KINDS, type JobKind } from "../../logbook/jobRecord";
import type { Suggestion } from "../../logbook/whatNext";
import { HELP_WORDS, shortTitle } from "./attemptRows";
import { jobAddress } from "./jobAddress";

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

/** A job as something to do. */
const JOBS: Readonly<Record<JobKind, string>> = {
  change: "changing the combination",
  trouble: "finding trouble",
  handover: "handing over",
};

const jobOf = ({ exercise }: Suggestion["skill"]) => JOB_KINDS.find((kind) => kind === exercise);

function linksOf({ kind, skill, help, misses }: Suggestion): SuggestionRow["links"] {
  const job = jobOf(skill);
  if (job !== undefined) {
    // A handover run gives no help at all.
    const helpText = job === "handover" ? "" : `, ${HELP_WORDS[help]}`;
    return [{ address: jobAddress(job, skill.profileId, help), label: `To the Handover page${helpText}` }];
  }
  if (kind === "redo-misses") return misses.slice(0, MOST_LINKS).map(redoLink);
  return [{ address: benchAddress(skill.profileId, help, null), label: `To the bench, ${HELP_WORDS[help]}` }];
}

/** A suggestion, with the benches that are set up for it. */
export function suggestionRow(suggestion: Suggestion): SuggestionRow {
  const { kind, skill, reason } = suggestion;
  const job = jobOf(skill);
  const profile = SHIPPED_PROFILES.find(({ id }) => id === skill.profileId) ?? null;
  const at = shortTitle(profile, skill.profileId);
  return {
    key: `${kind} ${skill.profileId} ${skill.exercise}`,
    title: `${job !== undefined && kind === "redo-misses" ? "Redo" : TITLES[kind]}: ${at}${job === undefined ? "" : `, ${JOBS[job]}`}`,
    reason,
    links: profile === null ? [] : linksOf(suggestion),
  };
}
