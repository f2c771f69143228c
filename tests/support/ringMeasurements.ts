import { CENTERED, type Offset, readingError } from "../../src/fitting/offCenter";
import { offsetEstimate, type RingReading } from "../../src/fitting/offsetEstimate";
import type { Chance } from "../../src/statistics/chance";
import { drawNormal } from "../../src/statistics/drawNormal";
import { mean, standardDeviation } from "../../src/statistics/sample";

export const PER_TURN = 100;
export const RADIUS_MM = 40;
/** What the intervals of simulated measurements claim. */
export const CONFIDENCE = 0.9;
const FOUR_PLACES = [0, 25, 50, 75];
/** How often a place is read in one measurement. */
const TIMES = 3;

/** A hidden ring: its middle off the axis, and how far it is turned, graduations. */
export interface HiddenRing extends Offset {
  readonly turned: number;
}

/** Readings of a hidden ring at four places, each taken several times by an eye of some spread, graduations. */
export function measured(
  { x_mm, y_mm, turned }: HiddenRing,
  times: number,
  spread: number,
  chance: Chance,
): readonly RingReading[] {
  const face = { perTurn: PER_TURN, radius_mm: RADIUS_MM, ring: { x_mm, y_mm }, dial: CENTERED };
  return Array.from({ length: times }, () => FOUR_PLACES)
    .flat()
    .map((place) => ({ place, error: drawNormal(chance, turned + readingError(face, place, 0), spread) }));
}

/** The standard error of one coordinate, millimeters: a reading's spread at the ring, over the readings that tell it. */
export const standardError_mm = (spread: number): number =>
  (spread * 2 * Math.PI * RADIUS_MM) / PER_TURN / Math.sqrt(2 * TIMES);

/** What many measurements of one ring come to. */
export interface ManyMeasurements {
  readonly bias_mm: Offset;
  readonly deviation_mm: Offset;
  /** Share of the intervals that hold the true coordinate. */
  readonly held: { readonly x: number; readonly y: number };
  /** Share of the regions that hold both together. */
  readonly agreed: number;
}

/** Measures a hidden ring again and again. @param spread - of one reading, graduations */
export function measureOften(truth: HiddenRing, spread: number, runs: number, chance: Chance): ManyMeasurements {
  const all = Array.from({ length: runs }, () =>
    offsetEstimate(measured(truth, TIMES, spread, chance), RADIUS_MM, PER_TURN, CONFIDENCE),
  );
  const values = (side: keyof Offset) => all.map(({ offset }) => offset[side]);
  const bias = (side: keyof Offset) => mean(values(side)) - truth[side];
  const held = (side: keyof Offset) =>
    all.filter(({ offset, halfWidth }) => Math.abs(offset[side] - truth[side]) <= halfWidth[side]).length / runs;
  return {
    bias_mm: { x_mm: bias("x_mm"), y_mm: bias("y_mm") },
    deviation_mm: { x_mm: standardDeviation(values("x_mm")), y_mm: standardDeviation(values("y_mm")) },
    held: { x: held("x_mm"), y: held("y_mm") },
    agreed: all.filter(({ agreesWith }) => agreesWith(truth)).length / runs,
  };
}
