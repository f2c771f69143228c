import type { Graduations, Milliseconds } from "../../../../lock/dial";
import type { DialInHand } from "../deviceSlot";
import type { Dials } from "./deviceTurns";

/** A dial that the hand has left alone for so long has come to rest, ms. */
const SETTLED_AFTER_MS: Milliseconds = 1000;
/** A dial within this of where it was left has not been moved, graduations. */
const SAME: Graduations = 0.005;

/**
 * Notices that the dial on the screen is not where the hand left it: it is another one, it was turned by something else, or it
 * was set elsewhere. Mutable.
 */
export class DialAgreement {
  /** Whether it was so when the hand last took hold: until it has turned the dial and left it alone again. */
  hasGoneOn = false;
  private readonly dials: Dials;
  private taken: DialInHand | undefined;
  private screenMoves = 0;
  private place: Graduations | null = null;
  private turned_ms: Milliseconds = Number.NEGATIVE_INFINITY;

  constructor(dials: Dials) {
    this.dials = dials;
  }

  /** The hand turns the dial. @param at - of the page's steady clock */
  turned(at: Milliseconds): void {
    this.turned_ms = Math.max(this.turned_ms, at);
    this.place = null;
  }

  /** Looks at the dial, now and then. @returns whether it is not where the hand left it */
  look(now: Milliseconds): boolean {
    const { dial } = this.dials;
    if (dial === undefined || dial.drawn().isReplay) return false;
    const hasStrayed = this.hasStrayed(dial);
    const isSettled = now - this.turned_ms >= SETTLED_AFTER_MS;
    if (hasStrayed) this.hasGoneOn = true;
    else if (isSettled && this.place === null) this.hasGoneOn = false;
    if (hasStrayed || isSettled) this.place = dial.drawn().seen;
    this.taken = dial;
    this.screenMoves = dial.screenMoves();
    return hasStrayed;
  }

  private hasStrayed(dial: DialInHand): boolean {
    if (this.taken === undefined) return false;
    if (dial !== this.taken || dial.screenMoves() !== this.screenMoves) return true;
    return this.place !== null && Math.abs(dial.drawn().seen - this.place) > SAME;
  }
}
