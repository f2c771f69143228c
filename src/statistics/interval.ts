import { mustLieIn } from "./statisticsError";

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
  mustLieIn("(0, 1)", "level", level, level > 0 && level < 1, "bad-level");
  return (1 + level) / 2;
}
