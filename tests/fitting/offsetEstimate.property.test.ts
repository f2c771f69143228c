import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CENTERED, readingError } from "../../src/fitting/offCenter";
import { offsetEstimate } from "../../src/fitting/offsetEstimate";
import { type Chance, seededChance } from "../../src/statistics/chance";
import { drawNormal } from "../../src/statistics/drawNormal";
import { mean } from "../../src/statistics/sample";

const PER_TURN = 100;
const RADIUS_MM = 40;
const FOUR_PLACES = [0, 25, 50, 75];

interface Hidden {
  readonly x_mm: number;
  readonly y_mm: number;
  readonly turned: number;
}

/** Readings of a hidden ring at four places, each taken several times by an eye of some spread. */
function measured({ x_mm, y_mm, turned }: Hidden, times: number, spread: number, chance: Chance) {
  const face = { perTurn: PER_TURN, radius_mm: RADIUS_MM, ring: { x_mm, y_mm }, dial: CENTERED };
  return Array.from({ length: times }, () => FOUR_PLACES)
    .flat()
    .map((place) => ({ place, error: drawNormal(chance, turned + readingError(face, place, 0), spread) }));
}

const hidden = fc.record({
  x_mm: fc.double({ min: -1.5, max: 1.5, noNaN: true }),
  y_mm: fc.double({ min: -1.5, max: 1.5, noNaN: true }),
  turned: fc.double({ min: -3, max: 3, noNaN: true }),
});

describe("readings at four places", () => {
  test("without any spread give the ring's own offset and turn", () => {
    fc.assert(
      fc.property(hidden, (one) => {
        const { offset, turned } = offsetEstimate(
          measured(one, 1, 0, () => 0.5),
          RADIUS_MM,
          PER_TURN,
        );
        expect(offset.x_mm).toBeCloseTo(one.x_mm, 9);
        expect(offset.y_mm).toBeCloseTo(one.y_mm, 9);
        expect(turned).toBeCloseTo(one.turned, 9);
      }),
    );
  });

  test("of 10,000 simulated technicians are off by nothing on the mean, and their intervals hold as often as they say", () => {
    const chance = seededChance(40);
    const truth = { x_mm: 0.5, y_mm: -0.3, turned: 0.2 };
    const runs = 10_000;
    const spread = 0.05;
    const estimates = Array.from({ length: runs }, () =>
      offsetEstimate(measured(truth, 3, spread, chance), RADIUS_MM, PER_TURN, 0.9),
    );
    // One reading's spread as millimeters at the ring, over the 6 readings that tell each coordinate.
    const standardError = (spread * 2 * Math.PI * RADIUS_MM) / PER_TURN / Math.sqrt(6);
    for (const side of ["x_mm", "y_mm"] as const) {
      const bias = mean(estimates.map(({ offset }) => offset[side])) - truth[side];
      expect(Math.abs(bias)).toBeLessThan((4 * standardError) / Math.sqrt(runs));
      const held = estimates.filter(
        ({ offset, halfWidth }) => Math.abs(offset[side] - truth[side]) <= halfWidth[side],
      ).length;
      expect(Math.abs(held / runs - 0.9)).toBeLessThan(4 * Math.sqrt((0.9 * 0.1) / runs));
    }
    const agreed = estimates.filter(({ agreesWith }) => agreesWith(truth)).length;
    expect(Math.abs(agreed / runs - 0.9)).toBeLessThan(4 * Math.sqrt((0.9 * 0.1) / runs));
  });
});

test("as many readings as unknowns tell an offset and nothing about how sure it is", () => {
  const face = { perTurn: PER_TURN, radius_mm: RADIUS_MM, ring: { x_mm: 1, y_mm: 0 }, dial: CENTERED };
  const three = [0, 30, 60].map((place) => ({ place, error: readingError(face, place, 0) }));
  const { offset, halfWidth, spread, agreesWith } = offsetEstimate(three, RADIUS_MM, PER_TURN);
  expect(offset.x_mm).toBeCloseTo(1, 9);
  expect(halfWidth).toEqual({ x_mm: Number.POSITIVE_INFINITY, y_mm: Number.POSITIVE_INFINITY });
  expect(spread).toBeNull();
  expect(agreesWith({ x_mm: -9, y_mm: 4 })).toBe(true);
});

test("readings at two places are too few, however often they are taken", () => {
  const two = [0, 50, 100, 150, -50].map((place) => ({ place, error: 0 }));
  expect(() => offsetEstimate(two, RADIUS_MM, PER_TURN)).toThrow("places of the ring: at least 3 values are needed");
});
