/** Reading a picture from its first row to its last takes no longer than this, s; below 0 from the last to the first. */
const LONGEST = 0.04;
/** Delays that are tried lie so far apart, s. */
const STEP = 0.004;
const COUNT = Math.round((2 * LONGEST) / STEP) + 1;
/** From this delay on, s, by films, and above this speed, turns/s, readings are off by more than half a graduation. */
const TOO_LONG = 0.027;
const SLOW = 0.3;
/** No reading may be off by more than this, turns, because the delay is not known: by four standard deviations of it. */
const FARTHEST = 0.0045;
/** A dial that is too much blurred to tell it in so many frames never will, and hides it too. */
const LONGEST_DOUBT = 12;
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
  /** Frames in which it was not known well enough. */
  private doubts = 0;
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
   * Whether the frame's reading may be off by half a graduation, because it is not known yet how long the camera takes. Asked
   * once for each frame that is read.
   *
   * @param speed - turns/s
   * @param row - how far from the picture's middle row, in its heights, what was read lies on the whole
   */
  isInDoubtAt(speed: number, row: number): boolean {
    if (this.doubts >= LONGEST_DOUBT || 4 * this.spread * Math.abs(speed * row) <= FARTHEST) return false;
    this.doubts++;
    return true;
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

  /** Standard deviation of the delay, s. */
  private get spread(): number {
    const most = Math.max(...this.likelihoods);
    let [weights, mean, square] = [0, 0, 0];
    for (const [k, likelihood] of this.likelihoods.entries()) {
      const weight = Math.exp(likelihood - most);
      weights += weight;
      mean += weight * delayAt(k);
      square += weight * delayAt(k) ** 2;
    }
    return Math.sqrt(Math.max(0, square / weights - (mean / weights) ** 2));
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
