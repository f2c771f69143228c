import { fittingResult } from "../../../fitting/fittingResult";
import { fittingEnd } from "../../../records/job/fittingEnd";
import { type JobNote, jobNote } from "../../../records/job/jobNote";
import type { FittingSession } from "./fittingSession";

/** What of a fitting is watched. */
type WatchedFitting = Pick<FittingSession, "profile" | "lock" | "assembly" | "chart" | "helpHad" | "wasDeclared"> & {
  startedAt: FittingSession["startedAt"];
};

/**
 * Watches fittings, and takes each down the first time that its debrief is shown: what is mended afterwards is mended with
 * the faults in view. One that goes on after a reload is the same job.
 */
export class FittingNotes {
  private readonly session: WatchedFitting;
  private readonly newId: () => string;
  private wasDeclared: boolean;

  /** @param newId - makes an id that nothing else has */
  constructor(session: WatchedFitting, newId: () => string) {
    this.session = session;
    this.newId = newId;
    this.wasDeclared = session.wasDeclared;
  }

  /**
   * Looks at the fitting after a change of it.
   *
   * @param now - milliseconds since 1970
   * @returns what is to be kept, or null
   */
  look(now: number): JobNote | null {
    const { session, wasDeclared } = this;
    if (session.chart.getSnapshot().context.acts > 0) session.startedAt ??= now;
    this.wasDeclared = session.wasDeclared;
    return session.wasDeclared && !wasDeclared ? this.note(session.startedAt ?? now, now) : null;
  }

  private note(startedAt: number, now: number): JobNote {
    const { profile, lock, assembly, chart, helpHad } = this.session;
    const frame = { id: this.newId(), profile, help: helpHad, startedAt, createdAt: now, updatedAt: now };
    const result = fittingResult(assembly, lock, chart.getSnapshot().context);
    return jobNote({ ...frame, duration_ms: now - startedAt }, fittingEnd(result));
  }
}
