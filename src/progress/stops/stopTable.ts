import type { Turn } from "../../lock/dial";
import type { StopRecord } from "../../records/attemptRecord";
import type { Interval } from "../../statistics/interval";
import { mean, sampleSummary } from "../../statistics/sample";
import { studentInterval } from "../../statistics/studentInterval";
import { judgedStopsOf, nearStops, type StoppedAttempt } from "./nearStops";

/** Stop errors of one kind, graduations along the turn; positive ran past. */
export interface StopErrors {
  readonly count: number;
  readonly bias: number;
  /** 95 %, Student's t; null for a single stop. */
  readonly biasInterval: Interval | null;
  /** Standard deviation with n - 1; null for a single stop. */
  readonly spread: number | null;
}

/** Stop errors by the place of the number, by direction, and of all. */
export interface StopTable {
  readonly all: StopErrors | null;
  /** Place 1 first; null where it has no stop. */
  readonly bySteps: readonly (StopErrors | null)[];
  readonly byTurns: Readonly<Record<Turn, StopErrors | null>>;
  /** Stops too far off to tell of the hand's aim. */
  readonly leftOut: number;
}

/** Bias and spread of stops; null where there are none. */
export function stopErrors(stops: readonly Pick<StopRecord, "error">[]): StopErrors | null {
  const errors = stops.map(({ error }) => error);
  if (errors.length === 0) return null;
  if (errors.length === 1) return { count: 1, bias: mean(errors), biasInterval: null, spread: null };
  const sample = sampleSummary(errors);
  return {
    count: sample.count,
    bias: sample.mean,
    biasInterval: studentInterval(sample),
    spread: sample.standardDeviation,
  };
}

/** Stop errors of attempts, bias apart from spread, for each number and each direction. */
export function stopTable(attempts: readonly StoppedAttempt[]): StopTable {
  const near = nearStops(attempts);
  const steps = near.reduce((most, { step }) => Math.max(most, step), 0);
  const ofTurn = (turn: Turn) => stopErrors(near.filter((stop) => stop.turn === turn));
  return {
    all: stopErrors(near),
    bySteps: Array.from({ length: steps }, (_, k) => stopErrors(near.filter(({ step }) => step === k + 1))),
    byTurns: { left: ofTurn("left"), right: ofTurn("right") },
    leftOut: attempts.reduce((sum, one) => sum + judgedStopsOf(one).length, 0) - near.length,
  };
}
