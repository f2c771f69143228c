import type { Graduations } from "../../lock/dial";
import type { AttemptRecord } from "../../records/attemptRecord";
import type { Interval } from "../../statistics/interval";
import { sampleSummary, sumOfSquaredDeviations } from "../../statistics/sample";
import { studentInterval } from "../../statistics/studentInterval";
import { judgedStopsOf } from "./nearStops";
import { worstStop } from "./worstStop";

/** An own estimate beside what it was of. Graduations, without sign. */
export interface JudgedStop {
  /** Which attempt it was, counted from 1 over all given. */
  readonly number: number;
  readonly said: Graduations;
  readonly was: Graduations;
}

/** How well somebody feels how far off a stop was. */
export interface EstimateCalibration {
  readonly count: number;
  /** Mean of said less was, graduations: negative takes the stops for better than they are. */
  readonly bias: number;
  /** 95 %, Student's t. */
  readonly biasInterval: Interval;
  /** Standard deviation of said less was, with n - 1, graduations. */
  readonly spread: number;
  /** Pearson's correlation of said and was, in [-1, 1]; null where either never changes. */
  readonly correlation: number | null;
}

/** The attempts for which an estimate was given before its result was shown. @param attempts - oldest first */
export function judgedStops(attempts: readonly Pick<AttemptRecord, "estimate" | "stops" | "sources">[]): JudgedStop[] {
  return attempts.flatMap((attempt, i) => {
    const { estimate } = attempt;
    const was = worstStop(judgedStopsOf(attempt));
    return estimate === undefined || was === null ? [] : [{ number: i + 1, said: Math.abs(estimate), was }];
  });
}

/**
 * Pearson's product-moment correlation, by the sums of squares of the sum and of the difference:
 * 4 Sxy = S(x+y) - S(x-y).
 */
function correlationOf(judged: readonly JudgedStop[]): number | null {
  const squares = (value: (one: JudgedStop) => number) => sumOfSquaredDeviations(judged.map(value));
  const scale = Math.sqrt(squares(({ said }) => said)) * Math.sqrt(squares(({ was }) => was));
  if (scale === 0) return null;
  const products = (squares(({ said, was }) => said + was) - squares(({ said, was }) => said - was)) / 4;
  return Math.max(-1, Math.min(1, products / scale));
}

/** Bias and spread of estimates; null for fewer than two. */
export function estimateCalibration(judged: readonly JudgedStop[]): EstimateCalibration | null {
  if (judged.length < 2) return null;
  const off = sampleSummary(judged.map(({ said, was }) => said - was));
  return {
    count: off.count,
    bias: off.mean,
    biasInterval: studentInterval(off),
    spread: off.standardDeviation,
    correlation: correlationOf(judged),
  };
}
