import { drawTooLong } from "../../dialing/freshReading";
import { arrivals, type Run, RunFollower, runLength } from "../../dialing/runs";
import type { Combination } from "../../lock/combination";
import { type Graduations, reading, wrap } from "../../lock/dial";
import { exact } from "../../lock/exact";
import type { DialEncoderProfile } from "../../lock/profile";

/** What an encoder lock makes of a dialing of new numbers once its last turn is done. */
export type Entry =
  | { readonly numbers: Combination }
  /** The number, from 1, that had too few turns; 0 where the hand turned about more often than there are numbers. */
  | { readonly refusedAt: number };

/**
 * Reads new numbers off a dial: for every run the graduation nearest to where the hand stopped.
 *
 * The procedure is the one for opening, and the last turn, as long as a draw, ends the entry. Runs are taken one by one; a
 * run long enough for the first number begins the entry anew. Under a later number such a run may as well be going round
 * again, as when the lock is opened: it is that number until the turn after it is too long for a draw, and only then a new
 * first number. So an entry with such a run is done when the hand turns back from its last turn, or at once where it says
 * numbers that the lock knows. A lock that takes new numbers knows no pause. Own practice: common practice, no source.
 * Mutable.
 */
export class EntryReader {
  private readonly profile: DialEncoderProfile;
  private follower: RunFollower;
  private runs: Run[] = [];
  /** The run that goes round again and may as well be a new first number, as an index of `runs`; null if none does. */
  private restart: number | null = null;
  /** Where the dial stood when the entry under way began, unwrapped graduations. */
  begunAt: Graduations;

  /** @param position - where the dial stands, unwrapped graduations */
  constructor(profile: DialEncoderProfile, position: Graduations) {
    this.profile = profile;
    this.follower = new RunFollower(position, profile.turnback);
    this.begunAt = position;
  }

  /**
   * Takes in where the dial stands after a move in one direction.
   *
   * @param position - unwrapped graduations
   * @param known - numbers that the lock has taken and waits to be told again, or null
   * @returns the entry once it is done, else null
   */
  moveTo(position: Graduations, known: Combination | null): Entry | null {
    const change = this.follower.moveTo(position);
    const { current } = this.follower;
    if (current === null || change === "none") return null;
    const isNew = change === "begun" || this.runs.length === 0;
    if (isNew && this.restart !== null && this.isDrawn(this.runs.at(-1))) return this.giveUp(current);
    if (isNew) this.runs.push(current);
    else this.runs[this.runs.length - 1] = current;
    this.startFresh(current);
    this.readAnew(current);
    const entry = this.done(current, known);
    if (entry !== null) this.forget(position);
    return entry;
  }

  /** The hand has turned back from a draw that was not too long: the entry is done, and the turn back begins the next. */
  private giveUp({ from, to }: Run): Entry {
    const entry = this.entryOf(this.runs);
    this.forget(from);
    this.moveTo(to, null);
    return entry;
  }

  /** Drops what came before a first run of the entry. */
  private startFresh(run: Run): void {
    const [first] = this.profile.procedure;
    const isFirstWay = run.turn === first?.turn;
    const isLong = runLength(run) >= ((first?.arrivals ?? 1) - 1) * this.profile.graduations;
    const isBeforeStart = this.runs.length === 1 && !isFirstWay;
    if (isBeforeStart) this.runs = [];
    else if (isFirstWay && isLong) this.beginWith(run);
  }

  private beginWith(run: Run): void {
    const under = this.runs.length - 1;
    const mayGoRound = under > 0 && under < this.profile.procedure.length;
    this.restart = mayGoRound ? under : null;
    if (!mayGoRound) this.runs = [run];
  }

  /** A turn after the last number that is too long for a draw: the run before it was a new first number after all. */
  private readAnew(run: Run): void {
    if (this.restart === null || !this.isDrawn(run) || runLength(run) <= drawTooLong(this.profile)) return;
    this.runs = this.runs.slice(this.restart);
    this.restart = null;
  }

  /** Whether a run, the last one, follows the last number and has been turned as far as a draw. */
  private isDrawn(run: Run | undefined): boolean {
    const { procedure, draw } = this.profile;
    const isAfter = this.runs.length > procedure.length && run?.turn === draw.turn;
    return isAfter && run !== undefined && runLength(run) >= exact(draw.travel);
  }

  private done(run: Run, known: Combination | null): Entry | null {
    if (this.runs.length > this.profile.procedure.length + 1) return { refusedAt: 0 };
    if (!this.isDrawn(run)) return null;
    const entry = this.entryOf(this.runs);
    return this.restart === null || this.says(entry, known) ? entry : null;
  }

  private entryOf(runs: readonly Run[]): Entry {
    const { procedure } = this.profile;
    const short = procedure.findIndex((step, k) => this.arrivalsOf(runs[k]) < step.arrivals);
    return short < 0 ? { numbers: runs.slice(0, -1).map((one) => this.numberOf(one)) } : { refusedAt: short + 1 };
  }

  private says(entry: Entry, known: Combination | null): boolean {
    return known !== null && "numbers" in entry && agree(this.profile, known, entry.numbers);
  }

  private numberOf({ to }: Run): Graduations {
    return reading(Math.round(to), this.profile.graduations);
  }

  private arrivalsOf(run: Run | undefined): number {
    const { graduations, stopTolerance } = this.profile;
    return run === undefined ? 0 : arrivals(run, this.numberOf(run), graduations, stopTolerance);
  }

  private forget(position: Graduations): void {
    this.runs = [];
    this.restart = null;
    this.begunAt = position;
    this.follower = new RunFollower(position, this.profile.turnback);
  }
}

/** Whether two dialings of new numbers are the same to an encoder lock: every number within the stop tolerance. */
export function agree(
  { graduations, stopTolerance }: DialEncoderProfile,
  one: Combination,
  other: Combination,
): boolean {
  return one.every((number, k) => Math.abs(wrap(number - (other[k] ?? 0), graduations)) <= stopTolerance);
}
