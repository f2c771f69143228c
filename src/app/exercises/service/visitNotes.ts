import { type JobNote, jobNote } from "../../../records/job/jobNote";
import { serviceEnd } from "../../../records/job/serviceEnd";
import { visitResult } from "../../../service/visitResult";
import type { VisitSession } from "./visitSession";

/** What of a visit is watched. */
type WatchedVisit = Pick<VisitSession, "profile" | "setup" | "visit" | "tried" | "worked_ms">;

/** Watches service visits, and takes each down when its debrief is shown: nothing can be done to it after that. */
export class VisitNotes {
  private readonly session: WatchedVisit;
  private readonly newId: () => string;
  private visit: WatchedVisit["visit"];
  private startedAt: number | null = null;
  private isTold: boolean;

  /** @param newId - makes an id that nothing else has */
  constructor(session: WatchedVisit, newId: () => string) {
    this.session = session;
    this.newId = newId;
    this.visit = session.visit;
    this.isTold = session.visit.isOver;
  }

  /**
   * Looks at the visit after a change of it.
   *
   * @param now - milliseconds since 1970
   * @returns what is to be kept, or null
   */
  look(now: number): JobNote | null {
    const { visit, tried, worked_ms } = this.session;
    if (visit !== this.visit) this.beginWith(visit);
    if (tried.length > 0) this.startedAt ??= now - worked_ms;
    if (!visit.isOver || this.isTold) return null;
    this.isTold = true;
    return this.note(this.startedAt ?? now, now);
  }

  /** Another door. */
  private beginWith(visit: WatchedVisit["visit"]): void {
    this.visit = visit;
    this.startedAt = null;
    this.isTold = false;
  }

  private note(startedAt: number, now: number): JobNote {
    const { profile, setup, visit } = this.session;
    const frame = { id: this.newId(), profile, help: setup.help, startedAt, createdAt: now, updatedAt: now };
    return jobNote({ ...frame, duration_ms: now - startedAt }, serviceEnd(visitResult(visit), setup.seed));
  }
}
