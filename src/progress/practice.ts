import type { SourceDescription } from "../realdial/sources/sourceDescription";
import type { AttemptRecord } from "../records/attemptRecord";
import type { JobRecord } from "../records/jobRecord";
import type { SkillTry } from "../records/skill";

/** One try at a skill, whatever the skill: an attempt at dialing, or a job. */
export interface Practice extends SkillTry {
  readonly id: string;
  readonly personId: string;
  /** Milliseconds since 1970. */
  readonly startedAt: number;
  readonly duration_ms: number;
  /** Whether the lock opened the first time, or the job was right. */
  readonly opened: boolean;
  /** Too late for its sitting: then it does not count as right. */
  readonly isLate?: boolean | undefined;
  /** What turned the dial, where that was not the hands on the screen alone. */
  readonly sources?: readonly SourceDescription[] | undefined;
}

/** A job as a try at the skill that is named by its kind. */
export function practiceOfJob(job: JobRecord): Practice {
  const { id, personId, startedAt, duration_ms, profileId, kind, isRight, sources } = job;
  const frame = { id, personId, startedAt, duration_ms, profileId };
  return { ...frame, exercise: kind, opened: isRight, ...(sources && { sources }) };
}

/** Attempts and jobs together, oldest first. */
export function practicesOf(attempts: readonly AttemptRecord[], jobs: readonly JobRecord[]): Practice[] {
  const all: Practice[] = [...attempts, ...jobs.map(practiceOfJob)];
  return all.sort((one, other) => one.startedAt - other.startedAt || (one.id < other.id ? -1 : 1));
}
