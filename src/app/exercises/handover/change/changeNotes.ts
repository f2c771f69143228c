import type { Change } from "../../../../handover/change/change";
import { leftBy } from "../../../../handover/change/changeOutcome";
import { PackChange } from "../../../../handover/change/packChange";
import { changeEnd } from "../../../../records/job/changeEnd";
import { type JobNote, jobNote } from "../../../../records/job/jobNote";
import type { ChangeSession } from "./changeSession";

/** What of a change on the screen is watched. */
type WatchedChange = Pick<ChangeSession, "change" | "state" | "help" | "turnedBy">;

/** Whether nothing more can come of a change: spoiled, proved, or the door is shut. */
const isClosed = ({ change, state }: Pick<WatchedChange, "change" | "state">) =>
  state === "proved" || change.isDoorShut || (change instanceof PackChange && change.isSpoiled);

/** Whether a proof has shown that the lock is set to something else. */
const isShownOff = ({ change, state }: Pick<WatchedChange, "change" | "state">) =>
  state === "proofRefused" && leftBy(change) === "off";

/**
 * Watches changes of a combination, and takes each down when a proof shows it to be off, and when it has ended. What was
 * missed at first stays on record when it is mended.
 */
export class ChangeNotes {
  private readonly session: WatchedChange;
  private readonly newId: () => string;
  private change: Change;
  private dial: number;
  private state: WatchedChange["state"];
  /** By the steady clock, milliseconds; null before the dial has moved. */
  private begunAt: number | null = null;
  private made: Pick<JobNote, "id" | "startedAt" | "createdAt"> | null = null;
  private missed: readonly string[] = [];
  private hasClosed = false;

  /** @param newId - makes an id that nothing else has */
  constructor(session: WatchedChange, newId: () => string) {
    this.session = session;
    this.newId = newId;
    this.change = session.change;
    this.dial = session.change.dial;
    this.state = session.state;
  }

  /**
   * Looks at the exercise after a change of it.
   *
   * @param now - wall time, milliseconds since 1970
   * @param steady_ms - the same moment by a clock that only goes on
   * @returns what is to be kept, or null
   */
  look(now: number, steady_ms = now): JobNote | null {
    const { session } = this;
    if (session.change !== this.change) this.beginWith(session.change);
    const hasMoved = session.change.dial !== this.dial || session.state !== this.state;
    const isNews = session.state !== this.state;
    this.state = session.state;
    if (hasMoved) this.begunAt ??= steady_ms;
    if (this.hasClosed || !isNews) return null;
    this.hasClosed = isClosed(session);
    return this.hasClosed || isShownOff(session) ? this.note(now, steady_ms - (this.begunAt ?? steady_ms)) : null;
  }

  private beginWith(change: Change): void {
    this.change = change;
    this.dial = change.dial;
    this.state = this.session.state;
    this.begunAt = null;
    this.made = null;
    this.missed = [];
    this.hasClosed = false;
  }

  private note(now: number, duration_ms: number): JobNote {
    const { change, help, turnedBy } = this.session;
    this.made ??= { id: this.newId(), startedAt: now - duration_ms, createdAt: now };
    const end = changeEnd(change);
    this.missed = [...this.missed, ...end.missed.filter((code) => this.hasClosed || code !== "not-proved")];
    const frame = { ...this.made, profile: change.profile, help, updatedAt: now, ...turnedBy.forRecord };
    return jobNote({ ...frame, duration_ms }, { ...end, missed: this.missed });
  }
}
