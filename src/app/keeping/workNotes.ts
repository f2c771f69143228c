import type { Milliseconds } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import type { HelpLevel } from "../../records/attemptRecord";
import { type JobEnd, type JobNote, jobNote } from "../../records/job/jobNote";
import type { TimedWork } from "./timedWork";

/** Work that may be done again and again with one session. */
type WatchedWork = Pick<TimedWork, "begunAt" | "workedBy"> & { readonly profile: Profile };

/** Watches work of one kind, and takes each piece of it down once, when it has ended. */
export abstract class WorkNotes<Work extends WatchedWork> {
  protected readonly work: Work;
  private readonly newId: () => string;
  private subject: unknown;
  private isTold: boolean;

  /** @param newId - makes an id that nothing else has */
  constructor(work: Work, newId: () => string) {
    this.work = work;
    this.newId = newId;
    this.subject = this.workedOn();
    // One that goes on after its end was taken down on the page before.
    this.isTold = this.hasEnded();
  }

  /** What is worked on: another one is a job of its own. */
  protected abstract workedOn(): object;
  protected abstract hasBegun(): boolean;
  protected abstract hasEnded(): boolean;
  protected abstract help(): HelpLevel;
  protected abstract end(): JobEnd;

  /**
   * Looks at the work after a change of it.
   *
   * @param now - wall time, milliseconds since 1970
   * @param steady_ms - the same moment by a clock that only goes on
   * @returns what is to be kept, or null
   */
  look(now: Milliseconds, steady_ms: Milliseconds = now): JobNote | null {
    if (this.workedOn() !== this.subject) {
      this.subject = this.workedOn();
      this.isTold = false;
    }
    if (this.hasBegun()) this.work.begunAt ??= steady_ms;
    if (!this.hasEnded() || this.isTold) return null;
    this.isTold = true;
    const duration_ms = this.work.workedBy(steady_ms);
    const times = { startedAt: now - duration_ms, createdAt: now, updatedAt: now, duration_ms };
    return jobNote({ id: this.newId(), profile: this.work.profile, help: this.help(), ...times }, this.end());
  }
}
