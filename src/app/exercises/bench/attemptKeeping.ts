import type { Attempt } from "../../../dialing/attempt";
import { runLength } from "../../../dialing/runs";
import type { NotedAttempt } from "../../keeping/notedAttempt";
import type { Outcome } from "../../replay/outcome";
import { AttemptNotes } from "./attemptNotes";
import type { BenchSession } from "./benchSession";

/** Where the attempts of a bench go. */
export interface AttemptTaker {
  readonly keep: (note: NotedAttempt) => void;
  /** An unfinished attempt was put away by the hand that made it. */
  readonly drop: (id: string) => void;
}

/** What of a bench is watched. */
type WatchedBench = Pick<
  BenchSession,
  "attempt" | "recording" | "setup" | "outcome" | "version" | "estimate" | "turnedBy"
>;

/** Way that the dial has been turned, graduations. */
const turned = ({ reader }: Attempt) => reader.runs.reduce((sum, run) => sum + runLength(run), 0);

/**
 * Watches a bench, and hands on its attempts: each when it has ended, and the one under way now and then, so that a page
 * that is killed loses a second of it and no more.
 *
 * An attempt counts as under way from its first whole turn on. One that is put away (again, new numbers, another lock) is
 * dropped; one whose page or screen goes away stays as unfinished.
 */
export class AttemptKeeping {
  private readonly bench: WatchedBench;
  private readonly taker: AttemptTaker;
  private readonly notes: AttemptNotes;
  private attempt: Attempt;
  private outcome: Outcome | null;
  private unfinishedId: string | null = null;
  /** The ended attempt that is shown, as it was kept. */
  private ended: NotedAttempt | null = null;
  private flushed: number;

  /** @param newId - makes an id that nothing else has */
  constructor(bench: WatchedBench, newId: () => string, taker: AttemptTaker) {
    this.bench = bench;
    this.taker = taker;
    this.notes = new AttemptNotes(newId);
    this.attempt = bench.attempt;
    this.outcome = bench.outcome;
    this.flushed = bench.version;
  }

  /** What a reload would end, a sentence; null where nothing is under way that is worth a word. */
  get endedByReload(): string | null {
    const { attempt, outcome } = this.bench;
    if (outcome !== null || turned(attempt) < attempt.profile.graduations) return null;
    return "The attempt you are dialing ends. It stays in your logbook as unfinished.";
  }

  /** Looks after every change of the bench. @param now - milliseconds since 1970 */
  look(now: number): void {
    const { attempt, outcome } = this.bench;
    if (attempt !== this.attempt) this.putAway();
    this.attempt = attempt;
    if (outcome === this.outcome) {
      this.addEstimate(now);
      return;
    }
    this.outcome = outcome;
    this.ended = outcome === null ? null : this.notes.note(this.bench, outcome, now);
    if (this.ended === null) return;
    this.unfinishedId = null;
    this.taker.keep(this.ended);
  }

  /** Hands on the attempt under way, if it has grown. @param now - milliseconds since 1970 */
  flush(now: number): void {
    const { attempt, outcome, version } = this.bench;
    if (outcome !== null || version === this.flushed || turned(attempt) < attempt.profile.graduations) return;
    this.flushed = version;
    const note = this.notes.note(this.bench, null, now);
    this.unfinishedId = note.record.id;
    this.taker.keep(note);
  }

  /** Keeps the attempt that has ended again once its estimate is given. */
  private addEstimate(now: number): void {
    const { ended } = this;
    const { estimate } = this.bench;
    if (ended === null || typeof estimate !== "number" || ended.record.estimate !== undefined) return;
    this.ended = { ...ended, record: { ...ended.record, estimate, updatedAt: now } };
    this.taker.keep(this.ended);
  }

  private putAway(): void {
    if (this.unfinishedId !== null) this.taker.drop(this.unfinishedId);
    this.unfinishedId = null;
  }
}
