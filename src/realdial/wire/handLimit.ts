import type { Milliseconds } from "../../lock/dial";

/** Turns in a millisecond that no hand makes: a dial that is spun makes some 12 a second, and a board follows 50. */
const FASTEST = 60 / 1000;
/** How far the lines of a busy page may lie behind, and a board's count of milliseconds be rounded. */
const BEHIND: Milliseconds = 1000;
const ROUNDED: Milliseconds = 1;
/** A count may flicker by one on either side. */
const FLICKER = 2;

/**
 * Tells what a hand may have turned from what none can have: by the board's clock from line to line, and in all by the page's,
 * since a board that counts wildly may tell the time wildly too. Mutable.
 */
export class HandLimit {
  private at: Milliseconds;
  /** Time that has not been turned in, as far as lines may lie behind. */
  private left = BEHIND;

  /** @param at - when it begins, by the page's clock */
  constructor(at: Milliseconds) {
    this.at = at;
  }

  /**
   * @param steps - by how many the count has changed @param countsPerTurn - steps in one turn
   * @param lasted - since the line before, by the board's clock @param at - when the line arrived, by the page's
   */
  allows(steps: number, countsPerTurn: number, lasted: Milliseconds, at: Milliseconds): boolean {
    this.left = Math.min(this.left, BEHIND) + Math.max(0, at - this.at);
    this.at = at;
    const takes = Math.max(0, Math.abs(steps) - FLICKER) / (countsPerTurn * FASTEST);
    if (takes > Math.min(this.left, lasted + ROUNDED)) return false;
    this.left -= takes;
    return true;
  }
}
