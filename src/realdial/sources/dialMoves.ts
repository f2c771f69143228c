import type { Graduations } from "../../lock/dial";
import { exact } from "../../lock/exact";

/**
 * Turns of a device as moves of a dial.
 *
 * Each move is the difference of two places on the dial, so that however many come, they do not drift from where the device
 * is: a step of an encoder with 2400 of them is no whole number of millionths of a graduation. Mutable.
 */
export class DialMoves {
  private readonly perTurn: number;
  private last: Graduations | null = null;

  /** @param perTurn - graduations in one turn of the dial, > 0 */
  constructor(perTurn: number) {
    this.perTurn = perTurn;
  }

  /** The device is taken up where it is: until then, and after it was lost, it turns nothing. */
  takeUp(turns: number): void {
    this.last = exact(turns * this.perTurn);
  }

  /**
   * @param turns - where the device is, unwrapped turns, left positive
   * @returns how far that turns the dial, graduations; 0 where it has just been taken up by this
   */
  moveTo(turns: number): Graduations {
    const place = exact(turns * this.perTurn);
    const by = this.last === null ? 0 : exact(place - this.last);
    this.last = place;
    return by;
  }
}
