import { inspectionEnd } from "../../../../records/job/inspectionEnd";
import { type JobNote, jobNote } from "../../../../records/job/jobNote";
import type { InspectionSession } from "./inspectionSession";

/** What of judging a fit is watched. */
type WatchedInspection = Pick<InspectionSession, "profile" | "lock" | "help" | "chart" | "result">;

/** Watches fits that are judged, and takes each down when the answer is given. */
export class InspectionNotes {
  private readonly session: WatchedInspection;
  private readonly newId: () => string;
  private lock: WatchedInspection["lock"];
  private startedAt: number | null = null;
  private isTold = false;

  /** @param newId - makes an id that nothing else has */
  constructor(session: WatchedInspection, newId: () => string) {
    this.session = session;
    this.newId = newId;
    this.lock = session.lock;
  }

  /**
   * Looks at the exercise after a change of it.
   *
   * @param now - milliseconds since 1970
   * @returns what is to be kept, or null
   */
  look(now: number): JobNote | null {
    const { lock, chart } = this.session;
    if (lock !== this.lock) {
      this.lock = lock;
      this.startedAt = null;
      this.isTold = false;
      return null;
    }
    this.startedAt ??= now;
    if (chart.getSnapshot().value !== "named" || this.isTold) return null;
    this.isTold = true;
    return this.note(this.startedAt, now);
  }

  private note(startedAt: number, now: number): JobNote {
    const { profile, help, result } = this.session;
    const frame = { id: this.newId(), profile, help, startedAt, createdAt: now, updatedAt: now };
    return jobNote({ ...frame, duration_ms: now - startedAt }, inspectionEnd(result));
  }
}
