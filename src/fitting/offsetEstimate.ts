import { inverse, Matrix, solve } from "ml-matrix";
import type { Graduations } from "../lock/dial";
import { compensatedSum } from "../statistics/compensatedSum";
import { fisherUpperTail } from "../statistics/fisherDistribution";
import { mustHold } from "../statistics/statisticsError";
import { studentQuantile } from "../statistics/studentDistribution";
import { faceOf, type Offset, readingError } from "./offCenter";

/** What the dial reads too much at a mark of the ring. */
export interface RingReading {
  /** Where the mark stands, graduations to the right of the ring's top. */
  readonly place: Graduations;
  /** Graduations. */
  readonly error: Graduations;
}

/** A ring's middle off the axis, as readings all round it tell it. */
export interface OffsetEstimate {
  readonly offset: Offset;
  /** What is the same at every place, graduations: the ring turned, or the dial not at zero. */
  readonly turned: Graduations;
  /** Of both intervals below, 0 to 1. */
  readonly confidence: number;
  /** How far to each side the offset may lie, millimeters; infinite where there are as few readings as unknowns. */
  readonly halfWidth: Offset;
  /** Standard deviation of one reading, graduations; null where it cannot be told. */
  readonly spread: Graduations | null;
  /** Whether another offset agrees with the readings, x and y together. */
  readonly agreesWith: (other: Offset) => boolean;
}

/** Offset to the right and up, and what is the same everywhere. */
const UNKNOWNS = 3;
/** Each step squares what is left; two would do for any ring that can be screwed on. */
const STEPS = 6;

function assertEnough(readings: readonly RingReading[], perTurn: number): void {
  const places = new Set(readings.map(({ place }) => ((place % perTurn) + perTurn) % perTurn));
  mustHold(places.size >= UNKNOWNS, "too-few-values", ["places of the ring"], { least: UNKNOWNS });
}

/** What the readings differ from the model by, and how the model follows its unknowns, a row each. */
function linearized(readings: readonly RingReading[], found: readonly number[], radius_mm: number, perTurn: number) {
  const [x_mm = 0, y_mm = 0, turned = 0] = found;
  const face = faceOf(perTurn, radius_mm, { x_mm, y_mm });
  const scale = perTurn / (2 * Math.PI);
  const rows = readings.map(({ place }) => {
    const q = (2 * Math.PI * place) / perTurn;
    const along = radius_mm + x_mm * Math.sin(q) + y_mm * Math.cos(q);
    const across = x_mm * Math.cos(q) - y_mm * Math.sin(q);
    const square = along ** 2 + across ** 2;
    return [
      (scale * (along * Math.cos(q) - across * Math.sin(q))) / square,
      (scale * (-along * Math.sin(q) - across * Math.cos(q))) / square,
      1,
    ];
  });
  const lacks = readings.map(({ place, error }) => error - turned - readingError(face, place, 0));
  return { rows: new Matrix(rows), lacks };
}

/**
 * Where the middle of a ring lies, by least squares of readings taken all round it with the dial at rest.
 *
 * Gauss-Newton on the exact reading error; intervals by Student's t and, for both coordinates together, by Fisher's F of a
 * linear model (Draper & Smith, Applied Regression Analysis; from memory). Readings at opposite places alone tell offset and
 * turn apart, since the one changes its sign there and the other does not.
 *
 * @param readings - at 3 different places or more; 4, a quarter of a turn apart, tell both coordinates equally well
 * @param radius_mm - of the marks, > 0
 * @param confidence - of the intervals, in (0, 1)
 * @throws {StatisticsError} `too-few-values` for fewer than 3 places
 */
export function offsetEstimate(
  readings: readonly RingReading[],
  radius_mm: number,
  perTurn: number,
  confidence = 0.95,
): OffsetEstimate {
  assertEnough(readings, perTurn);
  let found: readonly number[] = [0, 0, 0];
  for (let step = 0; step < STEPS; step++) {
    const { rows, lacks } = linearized(readings, found, radius_mm, perTurn);
    const by = solve(rows, Matrix.columnVector(lacks)).to1DArray();
    found = found.map((value, k) => value + (by[k] ?? 0));
  }
  const { rows, lacks } = linearized(readings, found, radius_mm, perTurn);
  const [x_mm = 0, y_mm = 0, turned = 0] = found;
  const freedom = readings.length - UNKNOWNS;
  const variance = freedom > 0 ? compensatedSum(lacks.map((one) => one ** 2)) / freedom : Number.POSITIVE_INFINITY;
  const unit = inverse(rows.transpose().mmul(rows));
  const half = (k: number) =>
    freedom > 0
      ? studentQuantile((1 + confidence) / 2, freedom) * Math.sqrt(variance * unit.get(k, k))
      : Number.POSITIVE_INFINITY;
  const inside = inverse(unit.subMatrix(0, 1, 0, 1));
  return {
    offset: { x_mm, y_mm },
    turned,
    confidence,
    halfWidth: { x_mm: half(0), y_mm: half(1) },
    spread: freedom > 0 ? Math.sqrt(variance) : null,
    agreesWith: (other) => {
      if (freedom <= 0) return true;
      const away = Matrix.columnVector([other.x_mm - x_mm, other.y_mm - y_mm]);
      const size = away.transpose().mmul(inside).mmul(away).get(0, 0);
      if (size === 0) return true;
      return fisherUpperTail(size / 2 / variance, 2, freedom) >= 1 - confidence;
    },
  };
}
