import { RestNoise } from "../motion/restNoise";

/** Graduations in a turn, for `RestNoise`: how large a rest may be does not hang on the dial on the screen. */
const PER_TURN = 100;

/**
 * How quiet a device is at rest that tells steps: its readings scatter, and wherever it stands within a step it tells the same.
 * Both together, as standard deviations: s of the readings, and step / sqrt(12) of a place anywhere within a step (JCGM 100:2008,
 * 4.3.7). Mutable.
 */
export class StepRest {
  private readonly within: number;
  private readonly scatter = new RestNoise();

  /** @param step - turns, > 0 */
  constructor(step: number) {
    this.within = step / Math.sqrt(12);
  }

  /** Before it has rested: what its step alone leaves open, turns, standard deviation. */
  get noise(): number {
    return this.within;
  }

  /** @param turns - where it is @param at - ms, later than the last @returns its noise, turns, once it has rested for a second; else null */
  take(turns: number, at: number): number | null {
    const rest = this.scatter.take(turns * PER_TURN, at);
    return rest === null ? null : Math.hypot(rest.noise / PER_TURN, this.within);
  }
}
