/** A dial at rest flickers by less than this, graduations. */
export const AT_REST = 0.06;
/** While it runs, readings fall back by less than this, graduations. */
const RUNNING_BACK = 0.4;
/** Graduations a second from which it runs: blur and the camera's time make readings coarser. */
const RUNS_FROM = 40;

/**
 * Makes of readings that flicker a position that moves only where the dial does, so that a rest is a rest and a reversal is
 * one of the hand.
 */
export class DeadBand {
  private held: number | null = null;
  private last: { readonly at_ms: number; readonly position: number } | null = null;
  private direction = 0;
  private isRunning = false;

  /** Takes up a dial anew: the next reading is where it is. */
  reset(): void {
    this.held = null;
    this.last = null;
    this.direction = 0;
    this.isRunning = false;
  }

  /**
   * Takes a reading.
   *
   * @param position - graduations
   * @param at_ms - when it was so, later than the last
   * @returns where the dial is taken to be, graduations: the same number as before while it has not moved
   */
  take(position: number, at_ms: number): number {
    if (this.held === null) this.held = position;
    const move = position - this.held;
    const isBack = move * this.direction < 0;
    if (Math.abs(move) >= (isBack && this.isRunning ? RUNNING_BACK : AT_REST)) {
      this.held = position;
      this.direction = Math.sign(move);
    }
    const before = this.last ?? { at_ms: at_ms - 1, position };
    this.isRunning = (1000 * Math.abs(position - before.position)) / (at_ms - before.at_ms) >= RUNS_FROM;
    this.last = { at_ms, position };
    return this.held;
  }
}
