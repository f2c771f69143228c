import type { Sheet } from "../../../drill/sheet/sheet";
import { sittingPlan } from "../../../drill/sitting/sittingPlan";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import { redoSheet } from "../../../progress/practiceSheet";
import type { Suggestion } from "../../../progress/whatNext";
import { type AttemptCondition, heldUnder } from "../../../records/attemptConditions";
import type { AttemptRecord } from "../../../records/attemptRecord";
import { conditionsOfCodes } from "../../../records/conditionCode";
import { JOB_KINDS, type JobKind } from "../../../records/jobRecord";
import { countText } from "../../../wording/amountWords";
import { fitQuery, withWeight } from "../../hand/dial/dialAddress";
import { linkOf } from "../../keeping/sheets/sheetsAddress";
import { HELP_WORDS, shortTitle } from "../../results/attemptRows";
import { hasHelp, jobAddress } from "../../results/jobAddress";

/** One way to go on, ready to show. */
export interface SuggestionRow {
  readonly key: string;
  readonly title: string;
  readonly reason: string;
  /** Benches and runs that are set up for it; none for a lock that is not known. */
  readonly links: readonly { readonly address: string; readonly label: string }[];
}

const TITLES: Readonly<Record<Suggestion["kind"], string>> = {
  "redo-misses": "Repeat your misses",
  "go-on": "Keep going",
  refresh: "Practice again",
};

/** Misses that are offered at once; the rest come when these are made good. */
const MOST_LINKS = 5;

const benchAddress = (profileId: string, help: string, combination: readonly number[] | null) =>
  `#/bench?profile=${profileId}${combination === null ? "" : `&combination=${combination.join("-")}`}&help=${help}`;

/** Conditions that a bench cannot be set up with. */
const NOT_AT_BENCH: readonly AttemptCondition["kind"][] = ["noise", "no-cutaway"];

/** The bench set up as a miss was made; none where the bench has no such settings. */
function redoLink({ profileId, help, combination, conditions: codes, exercise }: AttemptRecord) {
  const conditions = conditionsOfCodes(codes);
  if (conditions === null || conditions.some(({ kind }) => NOT_AT_BENCH.includes(kind)) || exercise !== "open")
    return [];
  const held = heldUnder(conditions);
  const address = withWeight(benchAddress(profileId, help, combination), held.dial);
  return [{ address: `${address}${fitQuery(held)}`, label: combination.join("–") }];
}

/** A run of tries by a sheet; none where there is no such sheet, or it is too large for a link. */
export function runLink(sheet: Sheet | null, label: (tries: number) => string): SuggestionRow["links"] {
  const link = sheet === null ? null : linkOf(sheet, "sittings");
  if (sheet === null || link === null || "says" in link) return [];
  return [{ address: link.hash, label: label(sittingPlan(sheet).tries) }];
}

const redoLinks = (misses: readonly AttemptRecord[], isShipped: boolean) => [
  ...(isShipped ? misses.flatMap(redoLink).slice(0, MOST_LINKS) : []),
  ...runLink(redoSheet(misses), (tries) => `As one drill, ${countText(tries, "try", "tries")}`),
];

/** A job as something to do. */
const JOBS: Readonly<Record<JobKind, string>> = {
  change: "changing the combination",
  trouble: "finding a defect",
  handover: "handing over",
  fitting: "fitting a dial",
  service: "a service visit",
  inspection: "judging a fit",
};

/** Jobs that are done on the Fitting page. */
const ON_FITTING_PAGE: readonly JobKind[] = ["fitting", "service", "inspection"];

const jobOf = ({ exercise }: Suggestion["skill"]) => JOB_KINDS.find((kind) => kind === exercise);

function linksOf({ kind, skill, help, misses }: Suggestion, isShipped: boolean): SuggestionRow["links"] {
  const job = jobOf(skill);
  if (job === undefined && kind === "redo-misses") return redoLinks(misses, isShipped);
  if (!isShipped) return [];
  if (job !== undefined) {
    const helpText = hasHelp(job) ? `, ${HELP_WORDS[help]}` : "";
    const page = ON_FITTING_PAGE.includes(job) ? "Fitting" : "Handover";
    return [{ address: jobAddress(job, skill.profileId, help), label: `To the ${page} page${helpText}` }];
  }
  return [{ address: benchAddress(skill.profileId, help, null), label: `To the bench, ${HELP_WORDS[help]}` }];
}

/** A suggestion, with the benches that are set up for it. */
export function suggestionRow(suggestion: Suggestion): SuggestionRow {
  const { kind, skill, reason } = suggestion;
  const job = jobOf(skill);
  const profile = SHIPPED_PROFILES.find(({ id }) => id === skill.profileId) ?? null;
  const isShipped = profile !== null;
  const at = shortTitle(profile, skill.profileId);
  return {
    key: `${kind} ${skill.profileId} ${skill.exercise}`,
    title: `${job !== undefined && kind === "redo-misses" ? "Repeat" : TITLES[kind]}: ${at}${job === undefined ? "" : `, ${JOBS[job]}`}`,
    reason,
    links: linksOf(suggestion, isShipped),
  };
}
