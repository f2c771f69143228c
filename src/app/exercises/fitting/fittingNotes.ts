import { fittingResult } from "../../../fitting/fittingResult";
import { fittingEnd } from "../../../records/job/fittingEnd";
import { type JobNote, jobNote } from "../../../records/job/jobNote";
import type { FittingSession } from "./fittingSession";

/** What of a fitting is watched. */
type WatchedFitting = Pick<FittingSession, "profile" | "lock" | "assembly" | "chart" | "helpHad">;

/**
 * Watches fittings, and takes each down the first time that its debrief is shown: what is mended afterwards is mended with
 * the faults in view.
 */
export class FittingNotes {
  private readonly session: WatchedFitting;
  private readonly newId: () => string;
  private lock: WatchedFitting["lock"];
  private startedAt: number | null = null;
  private isTold = false;

  /** @param newId - makes an id that nothing else has */
  constructor(session: WatchedFitting, newId: () => string) {
    this.session = session;
    this.newId = newId;
    this.lock = session.lock;
  }

  /**
   * Looks at the fitting after a change of it.
   *
   * @param now - milliseconds since 1970
   * @returns what is to be kept, or null
   */
  look(now: number): JobNote | null {
    const { lock, chart } = this.session;
    if (lock !== this.lock) this.beginWith(lock);
    const { context, value } = chart.getSnapshot();
    if (context.acts > 0) this.startedAt ??= now;
    if (value !== "declared" || this.isTold) return null;
    this.isTold = true;
    return this.note(this.startedAt ?? now, now);
  }

  /** Another door. */
  private beginWith(lock: WatchedFitting["lock"]): void {
    this.lock = lock;
    this.startedAt = null;
    this.isTold = false;
  }

  private note(startedAt: number, now: number): JobNote {
    const { profile, lock, assembly, chart, helpHad } = this.session;
    const frame = { id: this.newId(), profile, help: helpHad, startedAt, createdAt: now, updatedAt: now };
    const result = fittingResult(assembly, lock, chart.getSnapshot().context);
    return jobNote({ ...frame, duration_ms: now - startedAt }, fittingEnd(result));
  }
}
