import { type GrayImage, isTooDark } from "../image/grayImage";
import type { SlowTurn } from "./slowTurn";

/** What is wrong with a slow turn while it is made; it can still be made good. */
export type TurnHint =
  /** The picture shows nothing. */
  | "too-dark"
  /** The dial goes on too far from picture to picture. */
  | "too-fast"
  /** It is turned the other way than before. */
  | "turned-back"
  /** Too much of the dial is covered. */
  | "covered";

/** Beyond this from one picture to the next the dial is nearly lost, graduations. */
const FAST = 1.2;
/** So far back, graduations, is more than a hand that takes hold anew. */
const BACK = 2;
/** So many pictures without the dial, one after the other, are more than a mishap. */
const LOST = 4;

/** Watches how a slow turn is made. Mutable. */
export class TurnWatch {
  private last = 0;
  private least = 0;
  private most = 0;
  private speed = 0;

  /** What to say after the next picture was taken; null while all is well. */
  look(image: GrayImage, { turnedBy, missedInARow }: Pick<SlowTurn, "turnedBy" | "missedInARow">): TurnHint | null {
    if (isTooDark(image)) return "too-dark";
    if (missedInARow >= LOST) return this.speed > FAST / 2 ? "too-fast" : "covered";
    if (missedInARow > 0) return null;
    this.speed = Math.abs(turnedBy - this.last);
    this.last = turnedBy;
    this.most = Math.max(this.most, turnedBy);
    this.least = Math.min(this.least, turnedBy);
    if (this.speed > FAST) return "too-fast";
    return turnedBy < this.most - BACK && turnedBy > this.least + BACK ? "turned-back" : null;
  }
}
