import type { HelpLevel } from "../../records/attemptRecord";
import { detailsOf } from "../../records/job/jobDetails";
import type { JobKind, JobRecord } from "../../records/jobRecord";

/** The part of the Handover page that a kind of job is done on; a fitting has a page of its own. */
const VIEWS = { change: "change", trouble: "trouble", handover: "run" } as const;

/** Kinds of job that have no help to choose. */
const WITHOUT_HELP: readonly JobKind[] = ["handover", "fitting"];

/** Whether one chooses how much help there is with a job. */
export const hasHelp = (kind: JobKind): boolean => !WITHOUT_HELP.includes(kind);

/** Where a job is done, set up for a lock and an amount of help. */
export const jobAddress = (kind: JobKind, profileId: string, help: HelpLevel): string =>
  kind === "fitting"
    ? `#/fitting?profile=${profileId}`
    : `#/handover?view=${VIEWS[kind]}&profile=${profileId}&help=${help}`;

/** Where one does a job again; a trouble is the same one. */
export function againAddress(job: JobRecord): string {
  const address = jobAddress(job.kind, job.profileId, job.help);
  const found = detailsOf(job);
  if (found?.kind !== "trouble") return address;
  return `${address}&seed=${found.details.seed}&pool=${found.details.pool.join(",")}`;
}
