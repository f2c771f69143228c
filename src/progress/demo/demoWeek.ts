import type { Profile } from "../../lock/profile";
import { shippedProfile } from "../../lock/shippedProfiles";
import type { HelpLevel } from "../../records/attemptRecord";
import { type JobEnd, jobNote } from "../../records/job/jobNote";
import type { JobKind, JobRecord } from "../../records/jobRecord";
import type { Chance } from "../../statistics/chance";

/** The week in which the invented school practices. */
export interface DemoWeek {
  /** Beginning of its Monday, milliseconds since 1970. */
  readonly monday: number;
  readonly drawId: () => string;
  readonly chance: Chance;
}

/** How a job ends that somebody begins. */
export type DemoEnd = (profile: Profile, chance: Chance) => JobEnd;

interface Lesson {
  /** Hours from the beginning of the week. */
  readonly begins_h: number;
  readonly help: HelpLevel;
}

const lesson = (day: number, hour: number, help: HelpLevel): Lesson => ({ begins_h: (day - 1) * 24 + hour, help });

/** When each kind of job is practiced, and with how much help. */
const LESSONS: Readonly<Record<JobKind, Lesson>> = {
  fitting: lesson(1, 13, "counts"),
  inspection: lesson(2, 13, "counts"),
  change: lesson(3, 13, "counts"),
  trouble: lesson(4, 13, "counts"),
  service: lesson(5, 10, "counts"),
  handover: lesson(5, 13, "silent"),
};

const HOUR_MS = 3_600_000;
/** From the beginning of one job to the next. */
const PAUSE_MS = 12 * 60_000;
/** Shortest and longest job. */
const [LEAST_MS, MOST_MS] = [150_000, 600_000] as const;
const PROFILE = shippedProfile("three-wheel");

/** The jobs of one kind that somebody does in the demo week, one after another. */
export function demoJobsOf(kind: JobKind, personId: string, ends: readonly DemoEnd[], week: DemoWeek): JobRecord[] {
  const { begins_h, help } = LESSONS[kind];
  return ends.map((end, place) => {
    const startedAt = week.monday + begins_h * HOUR_MS + place * PAUSE_MS;
    const duration_ms = Math.round(LEAST_MS + week.chance() * (MOST_MS - LEAST_MS));
    const endedAt = startedAt + duration_ms;
    const frame = { id: week.drawId(), profile: PROFILE, help, startedAt, createdAt: endedAt, updatedAt: endedAt };
    return { ...jobNote({ ...frame, duration_ms }, end(PROFILE, week.chance)), personId, tags: ["demo"] };
  });
}
