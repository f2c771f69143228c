import { parseCombination } from "../lock/combination";
import type { Profile } from "../lock/profile";
import { parseProfile } from "../lock/profileSchema";
import { shippedProfile } from "../lock/shippedProfiles";
import { type RecordedAttempt, writeAttemptLine } from "../trace/recordedAttempt";
import type { AttemptRecord } from "./attemptRecord";
import type { LogbookContents } from "./logbookContents";
import { decodeTrace } from "./traceCodec";

/** The lock of an attempt. @throws {LockError} for one that is not known here, or none */
export function profileOfAttempt({ profileId, ownProfile }: AttemptRecord): Profile {
  return ownProfile === undefined ? shippedProfile(profileId) : parseProfile(ownProfile);
}

/**
 * An attempt as it was recorded, ready to be replayed.
 *
 * @param trace - its packed motion
 * @throws {LockError} for a lock or combination that is none
 * @throws {LogbookError} `bad-trace`
 */
export function recordedAttempt(attempt: AttemptRecord, trace: Uint8Array): RecordedAttempt {
  const profile = profileOfAttempt(attempt);
  const { start, positions, times_ms } = decodeTrace(trace);
  return { profile, combination: parseCombination(profile, attempt.combination), start, positions, times_ms };
}

/** The line of an attempt, or null where it has no motion or its lock is not known here. */
function lineOf(attempt: AttemptRecord, trace: Uint8Array | undefined): string | null {
  if (trace === undefined) return null;
  try {
    const recorded = recordedAttempt(attempt, trace);
    const profile = attempt.ownProfile === undefined ? attempt.profileId : recorded.profile;
    return recorded.positions.length === 0 ? null : writeAttemptLine(recorded, profile);
  } catch {
    return null;
  }
}

/**
 * Attempts in the replay format, JSON Lines, one a line.
 *
 * @returns the text, and how many attempts were left out for want of a motion or a known lock
 */
export function attemptsReplay({ records, traces }: LogbookContents): {
  readonly text: string;
  readonly leftOut: number;
} {
  const lines = records.attempts.flatMap((attempt) => lineOf(attempt, traces.get(attempt.id)) ?? []);
  return { text: lines.map((line) => `${line}\n`).join(""), leftOut: records.attempts.length - lines.length };
}
