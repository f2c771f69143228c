import type { Milliseconds } from "../../../../lock/dial";
import type { ScreenFrames } from "./screenFrames";

/** So many moves are looked back on. */
const KEPT = 200;
/** With fewer nothing is said. */
const LEAST = 20;

/** How long a move of the hand takes to the screen: from when the device saw it until its frame is painted. */
export class PaintDelay {
  private readonly afterPaint: ScreenFrames["afterPaint"];
  private readonly delays: Milliseconds[] = [];
  /** When the oldest move that is not painted yet was seen. */
  private oldest: Milliseconds | null = null;

  constructor(after: ScreenFrames["afterPaint"]) {
    this.afterPaint = after;
  }

  /** The dial was moved. @param at - when the device saw it */
  moved(at: Milliseconds): void {
    if (this.oldest !== null) return;
    this.oldest = at;
    this.afterPaint((painted) => {
      this.delays.push(painted - at);
      if (this.delays.length > KEPT) this.delays.shift();
      this.oldest = null;
    });
  }

  /** The delay of the middle one of the last moves, and of the 95th of 100; null while there are too few. */
  get summary(): { readonly middle: Milliseconds; readonly most: Milliseconds } | null {
    if (this.delays.length < LEAST) return null;
    const sorted = this.delays.toSorted((a, b) => a - b);
    const part = (share: number) => sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
    return { middle: part(0.5), most: part(0.95) };
  }
}
