import { StatisticsError } from "./statisticsError";

/** All numbers from `low` to `high`, both included. An open side is infinite. */
export interface Interval {
  readonly low: number;
  /** Not below `low`. */
  readonly high: number;
}

/** Level of an interval where none is asked for: 95 %, two-sided. */
export const USUAL_LEVEL = 0.95;

/**
 * Probability below the upper end of a central interval.
 *
 * @param level - two-sided level of the interval, in (0, 1)
 * @returns in (0.5, 1)
 * @throws {StatisticsError} `bad-level` outside (0, 1)
 */
export function upperProbability(level: number): number {
  if (!(level > 0 && level < 1)) {
    throw new StatisticsError("bad-level", `A level lies between 0 and 1, and ${level} does not.`);
  }
  return (1 + level) / 2;
}
