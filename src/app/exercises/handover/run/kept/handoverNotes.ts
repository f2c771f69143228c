import { resultOf } from "../../../../../handover/run/checkRun";
import type { HandoverRun } from "../../../../../handover/run/handoverRun";
import { handoverEnd } from "../../../../../records/job/handoverEnd";
import { type JobNote, jobNote } from "../../../../../records/job/jobNote";
import type { HandoverSession } from "../session/handoverSession";

/** What of a handover run is watched. */
type WatchedRun = Pick<HandoverSession, "run" | "setup" | "turnedBy">;

/** Signatures that stood, those undone in the debrief too. */
const signatures = ({ steps }: HandoverRun) =>
  steps.filter(({ event, missing }) => event.type === "duty.signed" && missing.length === 0).length;

/**
 * Watches a handover run, and takes it down when the door is handed over for the first time. A run that goes on after a
 * reload, or is signed again after its debrief, is the same job.
 */
export class HandoverNotes {
  private readonly session: WatchedRun;
  private readonly newId: () => string;
  private signed: number;

  /** @param newId - makes an id that nothing else has */
  constructor(session: WatchedRun, newId: () => string) {
    this.session = session;
    this.newId = newId;
    this.signed = signatures(session.run);
  }

  /**
   * Looks at the run after a change of it.
   *
   * @param now - milliseconds since 1970
   * @returns what is to be kept, or null
   */
  look(now: number): JobNote | null {
    const { run, setup, turnedBy } = this.session;
    const before = this.signed;
    this.signed = signatures(run);
    if (before > 0 || this.signed === 0) return null;
    const result = resultOf(run, setup.isHandsOff);
    const { duration_ms } = result;
    const times = { startedAt: now - duration_ms, createdAt: now, updatedAt: now, duration_ms };
    // A run gives no help: it tells what followed, and never what to do next.
    const frame = { id: this.newId(), profile: setup.profile, help: "silent" as const, ...turnedBy.forRecord };
    return jobNote({ ...frame, ...times }, handoverEnd(result));
  }
}
