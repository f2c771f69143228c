import type { JobKind, JobRecord } from "../records/jobRecord";
import { type LatestPage, latestPage, type PageAsked } from "./latestPage";
import type { Logbook } from "./logbook";

/** Which jobs are asked for. */
export interface JobFilter {
  readonly personId: string;
  readonly kind?: JobKind | undefined;
  readonly profileId?: string | undefined;
  /** Only those that were not right. */
  readonly onlyMisses?: boolean | undefined;
  /** Leaves out the tries of these sittings, by their ids. */
  readonly notOf?: readonly string[] | undefined;
}

const matches = (job: JobRecord, { kind, profileId, onlyMisses, notOf = [] }: JobFilter) =>
  (job.sittingId === undefined || !notOf.includes(job.sittingId)) &&
  (kind === undefined || job.kind === kind) &&
  (profileId === undefined || job.profileId === profileId) &&
  (onlyMisses !== true || !job.isRight);

/** One page of jobs, latest first. @throws {LogbookError} when the storage fails */
export async function jobPage(logbook: Logbook, filter: JobFilter, asked: PageAsked): Promise<LatestPage<JobRecord>> {
  return latestPage(logbook, "jobs", filter.personId, (one) => matches(one, filter), asked);
}
