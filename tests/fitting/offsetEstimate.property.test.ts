import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CENTERED, readingError } from "../../src/fitting/offCenter";
import { offsetEstimate } from "../../src/fitting/offsetEstimate";
import { seededChance } from "../../src/statistics/chance";
import { CONFIDENCE, measured, measureOften, PER_TURN, RADIUS_MM, standardError_mm } from "../support/ringMeasurements";

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

  test.each(
    [
      { x_mm: 0, y_mm: 0, turned: 0 },
      { x_mm: 0.1, y_mm: 0, turned: 0.2 },
      { x_mm: 0.5, y_mm: -0.3, turned: 0.2 },
      { x_mm: -1.5, y_mm: 0, turned: -1 },
      { x_mm: -1.1, y_mm: 1.1, turned: 3 },
    ].flatMap((truth) => [0.02, 0.05, 0.2].map((spread) => ({ ...truth, spread }))),
  )(
    "of 2,000 measurements are off by nothing on the mean, and their intervals hold as often as they say: $x_mm, $y_mm mm, spread $spread",
    ({ spread, ...truth }) => {
      const runs = 2000;
      const { bias_mm, deviation_mm, held, agreed } = measureOften(truth, spread, runs, seededChance(40));
      const expected_mm = standardError_mm(spread);
      for (const side of ["x_mm", "y_mm"] as const) {
        expect(Math.abs(bias_mm[side])).toBeLessThan((4 * expected_mm) / Math.sqrt(runs));
        expect(Math.abs(deviation_mm[side] / expected_mm - 1)).toBeLessThan(4 / Math.sqrt(2 * runs) + 0.01);
      }
      for (const share of [held.x, held.y, agreed]) {
        expect(Math.abs(share - CONFIDENCE)).toBeLessThan(4 * Math.sqrt((CONFIDENCE * (1 - CONFIDENCE)) / runs));
      }
    },
  );
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
