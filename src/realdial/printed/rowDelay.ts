/** Reading a picture from its first row to its last takes no longer than this, s. */
const LONGEST = 0.04;
/** Speed, turns/s, from which delay is seen in the tracks. */
const SLOWEST = 0.3;
/** Of no delay at the beginning, and of all that was learned at most: frames at 1 turn/s with the whole disc in sight. */
const FIRST_WEIGHT = 2;
const MOST_WEIGHT = 20;
const MOST_OF_A_FRAME = 2;

/**
 * Learns how long a camera takes from the first row of a picture to its last. A turning disc is seen twisted by that: the
 * upper part as it was earlier. Times and positions of readings are those of the middle row.
 */
export class RowDelay {
  private delay_s = 0;
  private weights = FIRST_WEIGHT;

  /** By how much the disc is turned further from first row to last, turns, at a speed in turns/s. */
  twistAt(speed: number): number {
    return speed * this.delay_s;
  }

  /**
   * Takes what a frame shows.
   *
   * @param twist - turns from first row to last by which the disc is seen twisted
   * @param speed - turns/s at which it turned steadily
   * @param trust - share of the disc in sight
   */
  learn(twist: number, speed: number, trust: number): void {
    if (Math.abs(speed) < SLOWEST || Math.abs(twist / speed) > LONGEST) return;
    const weight = trust * Math.min(MOST_OF_A_FRAME, speed * speed);
    this.weights = Math.min(MOST_WEIGHT, this.weights + weight);
    const better = this.delay_s + ((twist / speed - this.delay_s) * weight) / this.weights;
    this.delay_s = Math.min(LONGEST, Math.max(-LONGEST, better));
  }
}
