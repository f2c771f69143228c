import { TROUBLE_GUIDE } from "../../handover/trouble/troubleGuide";
import { partWords } from "../../handover/trouble/troubleWords";
import { detailsOf, type TroubleDetails } from "../../records/job/jobDetails";
import type { JobRecord } from "../../records/jobRecord";
import { clockText, dayText } from "../parts/moments";
import { HELP_WORDS, knownProfile, shortTitle } from "./attemptRows";
import { hasHelp } from "./jobAddress";
import { JOB_WORDS, missedWord } from "./jobWords";

/** One line of the list of jobs, in words. */
export interface JobRow {
  readonly id: string;
  readonly day: string;
  readonly clock: string;
  readonly job: string;
  readonly lock: string;
  /** "" for a job that has no help to choose. */
  readonly help: string;
  readonly lockAndHelp: string;
  readonly result: "Right" | "Not right";
  /** What was missed, or what was named. */
  readonly missed: string;
  readonly time: string;
  /** With commas between; "" for none. */
  readonly tags: string;
}

/** "4:05 min"; "8 s" where it is less than a minute. */
export function minutesText(time_ms: number): string {
  const seconds = Math.round(time_ms / 1000);
  if (seconds < 60) return `${seconds} s`;
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")} min`;
}

/** Things that a line names; more are counted. */
const MOST_MISSED = 2;

function listText(codes: readonly string[]): string {
  if (codes.length === 0) return "nothing missed";
  const more = codes.length - MOST_MISSED;
  const named = codes.slice(0, MOST_MISSED).map(missedWord).join("; ");
  return more > 0 ? `${named}; ${more} more` : named;
}

const titleOf = (trouble: TroubleDetails["truth"]) => {
  const part = partWords(trouble);
  return `${TROUBLE_GUIDE[trouble.kind].title.toLowerCase()}${part === "" ? "" : `, ${part}`}`;
};

/** How far off a size was named, with its unit; null where the condition named is another. */
export function sizeErrorText({ truth, sizeError }: TroubleDetails): string | null {
  if (sizeError === null) return null;
  const off = Math.abs(sizeError).toFixed(2);
  return off === "0.00" ? "size exact" : `size off by ${off} ${TROUBLE_GUIDE[truth.kind].unit}`;
}

function troubleText(details: TroubleDetails, missed: readonly string[]): string {
  const { truth, named, isKindRight } = details;
  if (!isKindRight) return `named ${titleOf(named)}; it was ${titleOf(truth)}`;
  const guess = missed.includes("not-looked") ? "; a guess" : "";
  return `${titleOf(truth)}; ${sizeErrorText(details) ?? ""}${guess}`;
}

function missedText(job: JobRecord): string {
  const found = detailsOf(job);
  return found?.kind === "trouble" ? troubleText(found.details, job.missed) : listText(job.missed);
}

/** A job as a line of a list. */
export function jobRowOf(job: JobRecord): JobRow {
  const { id, startedAt, kind, profileId, help, isRight, duration_ms, tags } = job;
  const lock = shortTitle(knownProfile(job), profileId);
  const helpWords = hasHelp(kind) ? HELP_WORDS[help] : "";
  return {
    id,
    day: dayText(startedAt),
    clock: clockText(startedAt),
    job: JOB_WORDS[kind],
    lock,
    help: helpWords,
    lockAndHelp: helpWords === "" ? lock : `${lock}, ${helpWords}`,
    result: isRight ? "Right" : "Not right",
    missed: missedText(job),
    time: minutesText(duration_ms),
    tags: tags.join(", "),
  };
}
