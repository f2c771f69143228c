/** Reading a picture from its first row to its last takes no longer than this, s; below 0 from the last to the first. */
const LONGEST = 0.04;
/** Delays that are tried lie so far apart, s. */
const STEP = 0.004;
const COUNT = Math.round((2 * LONGEST) / STEP) + 1;
/** From this delay on, s, by films, and above this speed, turns/s, readings are off by more than half a graduation. */
const TOO_LONG = 0.027;
const SLOW = 0.3;
/** Speed, turns/s, from which delay is seen in the tracks. */
const SLOWEST = 0.1;
/** What is usual, s, before anything was seen: as a standard deviation around no delay. */
const USUAL = 0.02;
/** What sharpness counts for in the logarithm of a likelihood: some 100 samples of their own, light and dark half a way off. */
const WORTH = 100;
/** Of what was learned so much is left at the next frame. */
const KEPT = 0.98;

const delayAt = (k: number) => k * STEP - LONGEST;

/**
 * Learns how long a camera takes from the first row of a picture to its last. A turning disc is seen twisted by that: the
 * upper part as it was earlier. Its finest track is sharp only where the right twist is taken out. Times and positions of
 * readings are those of the middle row.
 */
export class RowDelay {
  private delay_s = 0;
  /** Logarithm of the likelihood of each delay. */
  private readonly likelihoods = Float64Array.from({ length: COUNT }, (_, k) => usual(k));

  /** By how much the disc is turned further from first row to last, turns, at a speed in turns/s. */
  twistAt(speed: number): number {
    return speed * this.delay_s;
  }

  /** Whether the camera takes so long that a disc is not read to half a graduation while it turns at a speed (turns/s). */
  isTooLongAt(speed: number): boolean {
    return Math.abs(this.delay_s) > TOO_LONG && Math.abs(speed) > SLOW;
  }

  /**
   * Takes what a frame shows.
   *
   * @param speed - turns/s at which it turned steadily
   * @param sharpnessAt - how sharp the finest track is with a twist (turns from first row to last) taken out, 0 to 1
   */
  learn(speed: number, sharpnessAt: (twist: number) => number): void {
    if (Math.abs(speed) < SLOWEST) return;
    for (let k = 0; k < COUNT; k++) {
      const learned = (this.likelihoods[k] as number) - usual(k);
      this.likelihoods[k] = usual(k) + KEPT * learned + WORTH * sharpnessAt(speed * delayAt(k));
    }
    this.delay_s = this.mostLikely();
  }

  /** The top of a parabola through the best and its neighbors. */
  private mostLikely(): number {
    const { likelihoods } = this;
    const best = likelihoods.indexOf(Math.max(...likelihoods));
    const [before, here, after] = [best - 1, best, best + 1].map((k) => likelihoods[k]);
    if (before === undefined || here === undefined || after === undefined) return delayAt(best);
    const bend = 2 * here - before - after;
    return delayAt(best) + (bend > 0 ? (STEP * (after - before)) / (2 * bend) : 0);
  }
}

const usual = (k: number) => -((delayAt(k) / USUAL) ** 2) / 2;
