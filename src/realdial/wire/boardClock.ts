import type { Milliseconds } from "../../lock/dial";

/** How long a line that came with little delay is held to tell of the clocks: a resonator is some 5 ms off in a second. */
const HOLDS: Milliseconds = 1000;

/**
 * When things happened on a board, by the clock of the page.
 *
 * Lines come late by what cable, system and a busy page take, never early: of those of the last seconds the least late one tells
 * how the clocks differ. Bytes that a page was given in one piece then still lie apart as they did on the board.
 */
export class BoardClock {
  private readonly differences = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  private since: Milliseconds = Number.NEGATIVE_INFINITY;
  private last: Milliseconds = Number.NEGATIVE_INFINITY;

  /**
   * @param ms - of the board, not wrapped; never before the line before it
   * @param arrived - by the page's clock
   * @returns by the page's clock; never after it arrived, never before the line before it
   */
  timeOf(ms: Milliseconds, arrived: Milliseconds): Milliseconds {
    const [newest = 0, older = 0] = this.differences;
    const difference = arrived - ms;
    const isOver = arrived - this.since > HOLDS;
    if (isOver) this.since = arrived;
    this.differences.splice(0, 2, isOver ? difference : Math.min(newest, difference), isOver ? newest : older);
    const least = Math.min(...this.differences);
    this.last = Math.min(arrived, Math.max(this.last, ms + least));
    return this.last;
  }
}
