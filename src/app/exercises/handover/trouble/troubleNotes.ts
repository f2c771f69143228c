import type { TroubleResult } from "../../../../handover/trouble/troubleResult";
import { type JobNote, jobNote } from "../../../../records/job/jobNote";
import { troubleEnd } from "../../../../records/job/troubleEnd";
import type { TroubleSession } from "./troubleSession";

/** What of the trouble bench is watched. */
type WatchedTrouble = Pick<TroubleSession, "result" | "setup" | "task" | "turnedBy">;

const lockOf = ({ profile, seed, pool }: TroubleResult) => JSON.stringify([profile, seed, pool]);

/** Watches the trouble bench, and takes every diagnosis down once the condition is told. */
export class TroubleNotes {
  private readonly session: WatchedTrouble;
  private readonly newId: () => string;
  private seen: TroubleResult | null;
  private readonly told = new Set<string>();

  /** @param newId - makes an id that nothing else has */
  constructor(session: WatchedTrouble, newId: () => string) {
    this.session = session;
    this.newId = newId;
    this.seen = session.result;
  }

  /**
   * Looks at the bench after a change of it.
   *
   * @param now - milliseconds since 1970
   * @returns what is to be kept, or null
   */
  look(now: number): JobNote | null {
    const { result, setup, task, turnedBy } = this.session;
    if (result === this.seen) return null;
    this.seen = result;
    if (result === null || this.isRepeat(result)) return null;
    const frame = { id: this.newId(), profile: task.card.profile, help: setup.help, createdAt: now, updatedAt: now };
    const { time_ms } = result;
    const times = { startedAt: now - time_ms, duration_ms: time_ms };
    return jobNote({ ...frame, ...times, ...turnedBy.forRecord }, troubleEnd(result));
  }

  /** A lock whose condition was told already shows nothing when it is named again. */
  private isRepeat(result: TroubleResult): boolean {
    const lock = lockOf(result);
    const isKnown = this.told.has(lock);
    this.told.add(lock);
    return isKnown;
  }
}
