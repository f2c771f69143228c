import { arrivals, type Run, RunFollower, runLength } from "../../dialing/runs";
import type { Combination } from "../../lock/combination";
import { type Graduations, reading } from "../../lock/dial";
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
 * run long enough for the first number begins the entry anew. A lock that takes new numbers knows no pause. Own practice:
 * common practice, no source. Mutable.
 */
export class EntryReader {
  private readonly profile: DialEncoderProfile;
  private follower: RunFollower;
  private runs: Run[] = [];

  /** @param position - where the dial stands, unwrapped graduations */
  constructor(profile: DialEncoderProfile, position: Graduations) {
    this.profile = profile;
    this.follower = new RunFollower(position, profile.turnback);
  }

  /**
   * Takes in where the dial stands after a move in one direction.
   *
   * @param position - unwrapped graduations
   * @returns the entry once it is done, else null
   */
  moveTo(position: Graduations): Entry | null {
    const change = this.follower.moveTo(position);
    const { current } = this.follower;
    if (current === null || change === "none") return null;
    if (change === "begun" || this.runs.length === 0) this.runs.push(current);
    else this.runs[this.runs.length - 1] = current;
    this.startFresh(current);
    const entry = this.done(current);
    if (entry !== null) this.forget(position);
    return entry;
  }

  /** Drops what came before a first run of the entry. */
  private startFresh(run: Run): void {
    const [first] = this.profile.procedure;
    const isFirstWay = run.turn === first?.turn;
    const isLong = runLength(run) >= ((first?.arrivals ?? 1) - 1) * this.profile.graduations;
    const isBeforeStart = this.runs.length === 1 && !isFirstWay;
    if (isBeforeStart) this.runs = [];
    else if (isFirstWay && isLong) this.runs = [run];
  }

  private done(run: Run): Entry | null {
    const { procedure, draw } = this.profile;
    if (this.runs.length > procedure.length + 1) return { refusedAt: 0 };
    const isDrawn = this.runs.length > procedure.length && run.turn === draw.turn && runLength(run) >= draw.travel;
    if (!isDrawn) return null;
    const short = procedure.findIndex((step, k) => this.arrivalsOf(this.runs[k]) < step.arrivals);
    return short < 0 ? { numbers: this.runs.slice(0, -1).map((one) => this.numberOf(one)) } : { refusedAt: short + 1 };
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
    this.follower = new RunFollower(position, this.profile.turnback);
  }
}
