import type { Milliseconds } from "../../../lock/dial";
import { Store } from "../../parts/page/store";
import type { TrySetup } from "./trySetup";

/**
 * One try at a job in a sitting: an exercise of the handover page under the candidate's hands, once.
 *
 * The exercise is a store of its own, worked by its own screen; whoever shows it says when it has changed. Nothing of
 * what it came to is told before the sitting's end. Asks nobody for time or chance.
 */
export abstract class JobTry extends Store {
  readonly setup: TrySetup;
  isBegun = false;
  isEnded = false;
  private begunAt: Milliseconds = 0;
  private workedAt: Milliseconds = 0;

  constructor(setup: TrySetup) {
    super();
    this.setup = setup;
  }

  /** The stores that change while the candidate works. */
  abstract get exercise(): readonly Store[];

  /** Whether the exercise has come to where nothing is left to do. */
  protected abstract get isOver(): boolean;

  /** The exercise has changed. @param at - of a steady clock */
  worked(at: Milliseconds): void {
    if (this.isEnded) return;
    if (!this.isBegun) this.begunAt = at;
    this.isBegun = true;
    this.workedAt = Math.max(at, this.begunAt);
    if (this.isOver) this.isEnded = true;
    this.changed();
  }

  /** The candidate says that the try is done. */
  end(): void {
    this.isEnded = true;
    this.changed();
  }

  /** What every result has: its place, and the time from the first to the last that was done. */
  protected get common() {
    const { station, repetition } = this.setup.plan;
    return { station, repetition, time_ms: this.workedAt - this.begunAt, isBrokenOff: false };
  }
}
