import type { Profile } from "../../lock/profile";
import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import type { DialDoubt } from "../../realdial/sources/dialDoubt";
import type { SourceDescription } from "../../realdial/sources/sourceDescription";
import type { HelpLevel } from "../attemptRecord";
import type { JobKind, JobRecord } from "../jobRecord";
import { jobIsRight } from "../jobRight";
import type { JobDetails } from "./jobDetails";

/** A job as it is kept, but for the person, who is looked up later. */
export type JobNote = Omit<JobRecord, "personId">;

/** What the kind of job does not tell: which lock, when, and with how much help. */
export interface JobFrame {
  readonly id: string;
  readonly profile: Profile;
  readonly help: HelpLevel;
  /** Milliseconds since 1970. */
  readonly startedAt: number;
  readonly createdAt: number;
  readonly updatedAt: number;
  readonly duration_ms: number;
  /** What turned the dial, where that was not the hands on the screen alone. */
  readonly sources?: readonly SourceDescription[] | undefined;
  /** Why its turns may be miscounted, where anything speaks for that. */
  readonly doubts?: readonly DialDoubt[] | undefined;
  /** Where it belongs to a sitting. */
  readonly sheetId?: string | undefined;
  readonly sittingId?: string | undefined;
}

/** How a job ended: codes of what was missed, and its details where they are still known. */
export type JobEnd = (JobDetails | { readonly kind: JobKind; readonly details?: undefined }) & {
  readonly missed: readonly string[];
};

/** Codes that a record takes. */
const MOST_MISSED = 100;

/** A job as it is kept, judged by its rule. */
export function jobNote(
  { profile, sources, doubts, sheetId, sittingId, duration_ms, ...frame }: JobFrame,
  { kind, details, missed }: JobEnd,
): JobNote {
  const codes = [...new Set(missed)].slice(0, MOST_MISSED);
  const came = { kind, missed: codes, ...(details !== undefined && { details: { ...details } }) };
  return {
    ...frame,
    startedAt: Math.round(frame.startedAt),
    // A clock that was set back meanwhile would have it end before it began.
    duration_ms: Math.max(0, duration_ms),
    profileId: profile.id,
    ...(SHIPPED_PROFILES.includes(profile) ? {} : { ownProfile: profile }),
    isRight: jobIsRight(came),
    ...came,
    ...(sources !== undefined && { sources: [...sources] }),
    ...(doubts !== undefined && { doubts: [...doubts] }),
    ...(sheetId !== undefined && { sheetId }),
    ...(sittingId !== undefined && { sittingId }),
    tags: [],
  };
}
