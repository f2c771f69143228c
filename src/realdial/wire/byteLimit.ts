import type { Milliseconds } from "../../lock/dial";

/** Bits a second of a board's line. */
export const BAUD = 115_200;
/** Bytes that such a line carries in a millisecond: eight bits each, with one to start and one to stop. */
const CARRIED = BAUD / 10 / 1000;
/** Bytes that may have waited for a busy page, no less than systems keep: some 2,000 lines, of which a board sends 125 a second. */
const WAITING = 64 * 1024;

/** Tells a board that sends more than its line carries, as one with another program may by a USB line. Mutable. */
export class ByteLimit {
  private at: Milliseconds;
  private left = WAITING;

  /** @param at - when it begins, by the page's clock */
  constructor(at: Milliseconds) {
    this.at = at;
  }

  /** @param bytes - how many arrived @param at - when, by the page's clock */
  allows(bytes: number, at: Milliseconds): boolean {
    this.left = Math.min(WAITING, this.left + CARRIED * Math.max(0, at - this.at));
    this.at = at;
    this.left -= bytes;
    return this.left >= 0;
  }
}
