import type { ZeroingRecord } from "../../../records/records";
import { type ZeroingNote, zeroingNote } from "../../../records/zeroing/zeroingNote";
import { zeroingOutcome } from "../../../records/zeroing/zeroingOutcome";
import type { LastReading } from "../../../zeroing/zeroingMachine";
import type { ZeroingSession } from "./session/zeroingSession";

/** What of a zeroing exercise is taken down. */
type NotedZeroing = Pick<ZeroingSession, "state" | "memory" | "lock" | "setup" | "turnedBy">;

type Reading = ZeroingRecord["readings"][number];

function readingOf({ side, deviation, refusal }: LastReading, { memory }: NotedZeroing): Reading {
  if (refusal !== null) return { turn: side, deviation, refusal };
  const cam = memory.accepted[side].at(-1)?.cam;
  return { turn: side, deviation, ...(cam !== undefined && { cam }) };
}

/** Watches a zeroing exercise, and takes down its readings and its end. */
export class ZeroingNotes {
  private readonly newId: () => string;
  private readonly profileId: string;
  private seen: LastReading | null = null;
  private readings: Reading[] = [];
  private made: Pick<ZeroingNote, "id" | "startedAt" | "createdAt"> | null = null;
  private outcome: ZeroingRecord["outcome"] = "broken-off";
  private hasEnded = false;

  /** @param newId - makes an id that nothing else has */
  constructor(profileId: string, newId: () => string) {
    this.profileId = profileId;
    this.newId = newId;
  }

  /**
   * Looks at the exercise after a change.
   *
   * @param now - milliseconds since 1970
   * @returns what is to be kept: at every reading, as broken off until it has come to its end; null else
   */
  look(session: NotedZeroing, now: number): ZeroingNote | null {
    if (session.state === "ringLoose") this.forget();
    const isRead = this.takeReading(session, now);
    const outcome = zeroingOutcome(session.state);
    const isNews = outcome !== "broken-off" && outcome !== this.outcome;
    this.outcome = outcome;
    if (isNews) this.hasEnded = true;
    if (isNews) return this.noteOf(session, outcome, now);
    // One that has ended stays so while more readings are taken.
    return isRead && !this.hasEnded ? this.noteOf(session, "broken-off", now) : null;
  }

  private takeReading(session: NotedZeroing, now: number): boolean {
    const { last } = session.memory;
    if (last === this.seen) return false;
    this.seen = last;
    if (last === null) return false;
    this.made ??= { id: this.newId(), startedAt: now, createdAt: now };
    this.readings.push(readingOf(last, session));
    return true;
  }

  private noteOf(session: NotedZeroing, outcome: ZeroingRecord["outcome"], now: number): ZeroingNote {
    const { lock, memory, setup, turnedBy } = session;
    const first = this.made ?? { id: this.newId(), startedAt: now, createdAt: now };
    // A series that was begun again leaves readings that count no more; what counted stands in the details.
    const details = {
      condition: lock.condition,
      rules: setup.rules,
      accepted: memory.accepted,
      reasons: memory.reasons,
    };
    return zeroingNote({
      ...first,
      updatedAt: now,
      profileId: this.profileId,
      outcome,
      readings: this.readings,
      ...turnedBy.forRecord,
      details,
    });
  }

  private forget(): void {
    this.seen = null;
    this.readings = [];
    this.made = null;
    this.hasEnded = false;
  }
}
