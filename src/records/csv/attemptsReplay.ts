import type { Motion } from "../../dialing/motion";
import { parseCombination } from "../../lock/combination";
import { harmlessName } from "../../lock/harmlessText";
import type { Profile } from "../../lock/profile";
import { parseProfile } from "../../lock/profileSchema";
import { shippedProfile } from "../../lock/shippedProfiles";
import { type RecordedAttempt, writeAttemptLine } from "../../trace/recordedAttempt";
import type { AttemptRecord } from "../attemptRecord";
import type { LogbookContents } from "../logbookContents";
import { decodeTrace } from "../motion/traceCodec";
import { timeCell } from "./csvText";
import { type NamedRecord, namedRecords } from "./recordColumns";

/** The lock of an attempt. @throws {LockError} for one that is not known here, or none */
export function profileOfAttempt({ profileId, ownProfile }: AttemptRecord): Profile {
  return ownProfile === undefined ? shippedProfile(profileId) : parseProfile(ownProfile);
}

/**
 * An attempt as it was recorded, ready to be replayed.
 *
 * @throws {LockError} for a lock or combination that is none
 */
export function recordedAttempt(attempt: AttemptRecord, { start, positions, times_ms }: Motion): RecordedAttempt {
  const profile = profileOfAttempt(attempt);
  const combination = parseCombination(profile, attempt.combination);
  const { sources } = attempt;
  return { profile, combination, start, positions, times_ms, ...(sources && { sources }) };
}

/** The motion as a line of the replay format, or null where there is none or its lock is not known here. */
function motionLine(attempt: AttemptRecord, trace: Uint8Array | undefined): string | null {
  if (trace === undefined) return null;
  try {
    const recorded = recordedAttempt(attempt, decodeTrace(trace));
    const profile = attempt.ownProfile === undefined ? attempt.profileId : recorded.profile;
    return recorded.positions.length === 0 ? null : writeAttemptLine(recorded, profile);
  } catch {
    return null;
  }
}

/** A line that begins with which attempt it is, whose and when. Readers of the format leave out what they do not know. */
function lineOf({ record, person }: NamedRecord<AttemptRecord>, trace: Uint8Array | undefined): string | null {
  const line = motionLine(record, trace);
  if (line === null) return null;
  const { id, personId, startedAt, sittingId } = record;
  const whose = { id, person: harmlessName(person), personId, startedAt: timeCell(startedAt), sittingId };
  return JSON.stringify({ ...whose, ...JSON.parse(line) });
}

/**
 * Attempts in the replay format, JSON Lines, one a line, earliest first; each with its id, person and time.
 *
 * @returns the text, and how many attempts were left out for want of a motion or a known lock
 */
export function attemptsReplay(contents: LogbookContents): {
  readonly text: string;
  readonly leftOut: number;
} {
  const attempts = namedRecords(contents, contents.records.attempts);
  const lines = attempts.flatMap((one) => lineOf(one, contents.traces.get(one.record.id)) ?? []);
  return { text: lines.map((line) => `${line}\n`).join(""), leftOut: attempts.length - lines.length };
}
