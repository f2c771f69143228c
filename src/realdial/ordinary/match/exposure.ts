/** Shortest and longest exposure that is believed, ms. */
const SHORTEST = 1;
const LONGEST = 34;
/** Part of the way to a new estimate. */
const LEARNING = 0.15;
/** Shares of the blur that the exposure would give, which are tried. */
const SHARES = [0.6, 1, 1.5];

/** Learns the camera's exposure from how blurred the dial is at its speed. */
export class Exposure {
  /** Milliseconds. */
  ms = 9;

  /** Blurs to try, columns, for a dial that may have one of some speeds (columns a ms). */
  blursFor(speeds: readonly number[]): number[] {
    const blurs = speeds.flatMap((speed) => SHARES.map((share) => Math.abs(speed) * this.ms * share));
    const steps = [...new Set(blurs.map((blur) => 2 * Math.round(blur / 2)))].sort((one, other) => one - other);
    return steps.filter((blur, i) => i === 0 || blur - (steps[i - 1] ?? 0) > 1 + 0.15 * blur);
  }

  /** A dial at a speed (columns a ms) was seen with a blur (columns). */
  learn(speed: number, blur: number): void {
    const seen = Math.min(LONGEST, Math.max(SHORTEST, blur / Math.abs(speed)));
    this.ms += LEARNING * (seen - this.ms);
  }
}
