import type { HelpLevel } from "../../records/attemptRecord";
import { detailsOf } from "../../records/job/jobDetails";
import type { JobKind, JobRecord } from "../../records/jobRecord";

/** The part of the Handover page that each kind of job is done on. */
const VIEWS: Readonly<Record<JobKind, string>> = { change: "change", trouble: "trouble", handover: "run" };

/** Where a job is done, set up for a lock and an amount of help. */
export const jobAddress = (kind: JobKind, profileId: string, help: HelpLevel): string =>
  `#/handover?view=${VIEWS[kind]}&profile=${profileId}&help=${help}`;

/** Where one does a job again; a trouble is the same one. */
export function againAddress(job: JobRecord): string {
  const address = jobAddress(job.kind, job.profileId, job.help);
  const found = detailsOf(job);
  if (found?.kind !== "trouble") return address;
  return `${address}&seed=${found.details.seed}&pool=${found.details.pool.join(",")}`;
}
