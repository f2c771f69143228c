import type { AttemptRecord } from "../../records/attemptRecord";
import { nearStops } from "./nearStops";

/** What progress is looked at in: time of an opening, mean stop error with its sign, or the worst stop without it. */
export type ProgressMeasure = "time" | "bias" | "worst-stop";

/** One attempt on a chart. */
export interface ProgressPoint {
  /** Which attempt it was, counted from 1 over all given. */
  readonly number: number;
  /** Seconds for time, graduations for stops. */
  readonly value: number;
  readonly attemptId: string;
}

/** Unit of each measure, for an axis. */
export const MEASURE_UNITS: Readonly<Record<ProgressMeasure, "s" | "graduations">> = {
  time: "s",
  bias: "graduations",
  "worst-stop": "graduations",
};

const errorsOf = (attempt: AttemptRecord) => nearStops([attempt]).map(({ error }) => error);

const VALUES: Readonly<Record<ProgressMeasure, (attempt: AttemptRecord) => number | undefined>> = {
  // A miss that was broken off early is no quick opening.
  time: ({ opened, duration_ms }) => (opened && duration_ms > 0 ? duration_ms / 1000 : undefined),
  bias: (attempt) => {
    const errors = errorsOf(attempt);
    return errors.length === 0 ? undefined : errors.reduce((sum, error) => sum + error, 0) / errors.length;
  },
  "worst-stop": (attempt) => {
    const errors = errorsOf(attempt);
    return errors.length === 0 ? undefined : Math.max(...errors.map(Math.abs));
  },
};

/**
 * Attempts as points of a chart; those without a value leave a gap in the numbers.
 *
 * @param attempts - oldest first
 */
export function progressPoints(attempts: readonly AttemptRecord[], measure: ProgressMeasure): ProgressPoint[] {
  return attempts.flatMap((attempt, i) => {
    const value = VALUES[measure](attempt);
    return value === undefined ? [] : [{ number: i + 1, value, attemptId: attempt.id }];
  });
}
