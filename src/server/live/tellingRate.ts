import { TELLING_LIMITS } from "../../school/wire/liveWire";

/** Messages beyond the bound, in a row, after which a bench is cut off. */
const PATIENCE = 500;

/** Bounds how often a bench may tell something: so many a second for long, more at once. */
export class TellingRate {
  private left: number = TELLING_LIMITS.atOnce;
  private last: number;
  private beyond = 0;

  /** @param now - milliseconds since 1970 */
  constructor(now: number) {
    this.last = now;
  }

  /** Whether one more is taken, is passed over, or one too many was sent. @param now - milliseconds since 1970 */
  next(now: number): "taken" | "passed-over" | "too-many" {
    const grown = (Math.max(0, now - this.last) / 1000) * TELLING_LIMITS.perSecond;
    this.left = Math.min(TELLING_LIMITS.atOnce, this.left + grown);
    this.last = now;
    if (this.left >= 1) {
      this.left -= 1;
      this.beyond = 0;
      return "taken";
    }
    this.beyond += 1;
    return this.beyond > PATIENCE ? "too-many" : "passed-over";
  }
}
