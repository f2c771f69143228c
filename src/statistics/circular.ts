import { compensatedSum } from "./compensatedSum";
import { assertSample } from "./sample";
import { mustHold, mustLieIn } from "./statisticsError";

/** A mean of vectors shorter than this is rounding, and points nowhere. */
const NO_LENGTH = 1e-12;

interface MeanVector {
  readonly cos: number;
  readonly sin: number;
}

function meanVector(readings: readonly number[], perTurn: number): MeanVector {
  mustLieIn("(0, ∞)", "perTurn", perTurn, perTurn > 0 && Number.isFinite(perTurn));
  assertSample(readings, 1);
  const angles = readings.map((reading) => ((reading % perTurn) / perTurn) * 2 * Math.PI);
  return {
    cos: compensatedSum(angles.map(Math.cos)) / readings.length,
    sin: compensatedSum(angles.map(Math.sin)) / readings.length,
  };
}

/**
 * Length of the mean of unit vectors: how well readings on a circle agree.
 *
 * Source: Zar (2010), Biostatistical Analysis, 5th ed., chapter 26.
 *
 * @param readings - on the circle, wrapped or not, at least one
 * @param perTurn - units in one turn, > 0 (360 for degrees)
 * @returns r, dimensionless in [0, 1]; 1 if all readings are the same
 * @throws {StatisticsError} `empty-sample`, `not-finite`, or `bad-parameter` for an impossible turn
 */
export function resultantLength(readings: readonly number[], perTurn: number): number {
  const { cos, sin } = meanVector(readings, perTurn);
  return Math.min(1, Math.hypot(cos, sin));
}

/**
 * Mean of readings on a circle, so that 99 and 1 of 100 average 0 and not 50.
 *
 * Source: Zar (2010), Biostatistical Analysis, 5th ed., chapter 26.
 *
 * @param readings - on the circle, wrapped or not, at least one
 * @param perTurn - units in one turn, > 0 (360 for degrees)
 * @returns same unit, in [0, perTurn)
 * @throws {StatisticsError} `no-direction` if the readings cancel out, `empty-sample`, `not-finite`, or `bad-parameter`
 */
export function circularMean(readings: readonly number[], perTurn: number): number {
  const { cos, sin } = meanVector(readings, perTurn);
  mustHold(Math.hypot(cos, sin) >= NO_LENGTH, "no-direction");
  const turns = Math.atan2(sin, cos) / (2 * Math.PI);
  const wrapped = turns < 0 ? turns + 1 : turns;
  const reading = wrapped * perTurn;
  // An angle just below zero rounds up to a whole turn, and -0 is not a reading.
  return reading >= perTurn ? 0 : reading + 0;
}

/**
 * Circular standard deviation.
 *
 * Source: Zar (2010), Biostatistical Analysis, 5th ed., chapter 26, s0, after Mardia (1972).
 *
 * @param readings - on the circle, wrapped or not, at least one
 * @param perTurn - units in one turn, > 0 (360 for degrees)
 * @returns same unit, >= 0; near the ordinary one for a small spread; without bound as the readings cancel out
 * @throws {StatisticsError} `empty-sample`, `not-finite`, or `bad-parameter` for an impossible turn
 */
export function circularStandardDeviation(readings: readonly number[], perTurn: number): number {
  const radians = Math.sqrt(-2 * Math.log(resultantLength(readings, perTurn)));
  return (radians / (2 * Math.PI)) * perTurn;
}

/**
 * Rayleigh's z: how far readings are from being spread evenly around the circle.
 *
 * Source: Zar (2010), Biostatistical Analysis, 5th ed., chapter 27.
 *
 * @param readings - on the circle, wrapped or not, at least one
 * @param perTurn - units in one turn, > 0 (360 for degrees)
 * @returns z = n r^2, dimensionless in [0, n]
 * @throws {StatisticsError} `empty-sample`, `not-finite`, or `bad-parameter` for an impossible turn
 */
export function rayleighZ(readings: readonly number[], perTurn: number): number {
  return readings.length * resultantLength(readings, perTurn) ** 2;
}
