import type { HelpLevel } from "../../records/attemptRecord";
import { detailsOf } from "../../records/job/jobDetails";
import type { JobKind, JobRecord } from "../../records/jobRecord";

/** The page, and the part of it, that a kind of job is done on. */
const PLACES: Readonly<Record<JobKind, string>> = {
  change: "handover?view=change&",
  trouble: "handover?view=trouble&",
  handover: "handover?view=run&",
  fitting: "fitting?",
  service: "fitting?view=service&",
  inspection: "fitting?view=find&",
};

/** Whether one chooses how much help there is with a job. */
export const hasHelp = (kind: JobKind): boolean => kind !== "handover";

/** Where a job is done, set up for a lock and an amount of help. */
export const jobAddress = (kind: JobKind, profileId: string, help: HelpLevel): string =>
  `#/${PLACES[kind]}profile=${profileId}&help=${help}`;

/** Where one does a job again; a trouble and a service visit are the same ones. */
export function againAddress(job: JobRecord): string {
  const address = jobAddress(job.kind, job.profileId, job.help);
  const found = detailsOf(job);
  if (found?.kind === "service" && found.details.seed !== null) return `${address}&seed=${found.details.seed}`;
  if (found?.kind !== "trouble") return address;
  return `${address}&seed=${found.details.seed}&pool=${found.details.pool.join(",")}`;
}
