import { faceText } from "../../dialing/words";
import type { Profile } from "../../lock/profile";
import { isDoubted } from "../../realdial/sources/dialDoubt";
import type { AttemptRecord } from "../../records/attemptRecord";
import { profileOfAttempt } from "../../records/csv/attemptsReplay";
import { clockText, dayText } from "../parts/moments";
import { signedText } from "../parts/signedText";
import { TURNS_IN_DOUBT } from "./doubtWords";

/** One line of the list of attempts, in words and figures. */
export interface AttemptRow {
  readonly id: string;
  readonly day: string;
  readonly clock: string;
  readonly lock: string;
  readonly combination: string;
  readonly help: string;
  readonly result: string;
  readonly faults: string;
  readonly stops: string;
  readonly time: string;
  /** With commas between; "" for none. */
  readonly tags: string;
}

/** The lock of an attempt, or null where this trainer does not know it. */
export function knownProfile(attempt: Pick<AttemptRecord, "profileId" | "ownProfile">): Profile | null {
  try {
    return profileOfAttempt({ ...attempt } as AttemptRecord);
  } catch {
    return null;
  }
}

/** "Three-wheel": what a lock is called where there is little room. */
export const shortTitle = (profile: Profile | null, id: string) => profile?.short ?? profile?.title ?? id;

const faultText = ({ code, number }: AttemptRecord["faults"][number]) =>
  `${code.replaceAll("-", " ")}, number ${number}`;

/** How much help there was, for a list. */
export const HELP_WORDS: Readonly<Record<AttemptRecord["help"], string>> = {
  full: "full help",
  counts: "counts",
  silent: "silent",
};

/** Faults that a line names; more are counted. */
const MOST_FAULTS = 2;

function faultsText(faults: AttemptRecord["faults"]): string {
  if (faults.length === 0) return "no fault";
  const more = faults.length - MOST_FAULTS;
  const named = faults.slice(0, MOST_FAULTS).map(faultText).join("; ");
  return more > 0 ? `${named}; ${more} more` : named;
}

function resultText(attempt: AttemptRecord): string {
  const { opened, isLate, isNotAdmitted, isUnfinished, exercise } = attempt;
  if (isUnfinished === true) return "Unfinished";
  const late = `${isLate === true ? " too late" : ""}${isNotAdmitted === true ? ", source not admitted" : ""}`;
  const doubt = isDoubted(attempt) ? `, ${TURNS_IN_DOUBT}` : "";
  if (exercise !== "open") return `${opened ? `Right${late}` : "Not right"}${doubt}: ${exercise}`;
  return `${opened ? `Opened${late}` : "Did not open"}${doubt}`;
}

/** An attempt as a line of the list. */
export function attemptRowOf(attempt: AttemptRecord): AttemptRow {
  const { id, startedAt, combination, help, faults, stops, duration_ms, tags } = attempt;
  const profile = knownProfile(attempt);
  return {
    id,
    day: dayText(startedAt),
    clock: clockText(startedAt),
    lock: shortTitle(profile, attempt.profileId),
    combination: combination.map((one) => (profile === null ? `${one}` : faceText(one, profile))).join("–"),
    help: HELP_WORDS[help],
    result: resultText(attempt),
    faults: faultsText(faults),
    stops: stops.length === 0 ? "–" : stops.map(({ error }) => signedText(error)).join(" "),
    time: `${(duration_ms / 1000).toFixed(1)} s`,
    tags: tags.join(", "),
  };
}
