/** What a reading within a turn says of whole turns. */
export interface Unwrapped {
  /** Turns to the left since the first reading's turn. */
  readonly turns: number;
  /** Whether another count of whole turns would do as well, or none does. */
  readonly isInDoubt: boolean;
}

/** Turns a second, each second: what a hand can do to a light dial between frames, and to stop one takes no time at all. */
const ACCELERATION = 30;

/** Frames are at least so far apart, s. */
const SHORTEST_s = 0.001;

/**
 * Counts whole turns from readings within a turn. A dial at speed v may be stopped at once, or go on and gain as much as a
 * hand can give it: all places between are possible after a gap. Only where one count of turns leads there is it sure.
 */
export class TurnCount {
  private last: { readonly at_ms: number; readonly turns: number } | null = null;
  /** Turns a second, left positive, between the last two readings. */
  private speed = 0;
  private speedBefore = 0;

  /** Turns a second at the next frame, as far as the last two speeds agree: halfway on from them, or the slower one, or 0. */
  get speedNow(): number {
    const { speed, speedBefore } = this;
    if (this.isSteady) return speed + (speed - speedBefore) / 2;
    if (speed * speedBefore <= 0) return 0;
    return Math.abs(speed) < Math.abs(speedBefore) ? speed : speedBefore;
  }

  /** What the dial's speed may have come to since, without its direction: it may go on to change as it did, turns a second. */
  get fastest(): number {
    return Math.abs(this.speed) + Math.abs(this.speed - this.speedBefore);
  }

  /** Where the dial will probably be; null where nothing is known. @returns turns, and how far they may be off */
  expected(at_ms: number): { readonly turns: number; readonly spread: number } | null {
    if (this.last === null) return null;
    const gap_s = (at_ms - this.last.at_ms) / 1000;
    const spread = 0.004 + Math.abs(this.speed) * gap_s * 0.3 + (ACCELERATION / 4) * gap_s * gap_s;
    return { turns: this.last.turns + this.speed * gap_s, spread };
  }

  /** Whether the last two speeds are nearly one. */
  get isSteady(): boolean {
    return Math.abs(this.speed - this.speedBefore) < 0.3 * Math.abs(this.speed);
  }

  /**
   * Takes a reading.
   *
   * @param within - turns, of which only the part of a turn counts
   * @param at_ms - when it was so, later than the last: an earlier one is taken for a moment later
   */
  take(within: number, at_ms: number): Unwrapped {
    if (this.last === null) {
      this.last = { at_ms, turns: within };
      return { turns: within, isInDoubt: false };
    }
    const gap_s = Math.max(SHORTEST_s, (at_ms - this.last.at_ms) / 1000);
    const { turns: before } = this.last;
    const turns = within + Math.round(before + this.speed * gap_s - within);
    const isInDoubt = this.isPossible(turns + 1, gap_s) || this.isPossible(turns - 1, gap_s);
    this.speedBefore = this.speed;
    this.speed = (turns - before) / gap_s;
    this.last = { at_ms, turns };
    return { turns, isInDoubt };
  }

  /** Whether a hand could have brought the dial there in that time. */
  private isPossible(turns: number, gap_s: number): boolean {
    const far = turns - (this.last?.turns ?? 0);
    const gain = (ACCELERATION * gap_s * gap_s) / 2;
    return far >= Math.min(0, this.speed * gap_s) - gain && far <= Math.max(0, this.speed * gap_s) + gain;
  }
}
