import fc from "fast-check";
import { expect, test } from "vitest";
import { gapFromSide, parallaxError } from "../../src/fitting/geometry/parallax";
import { CENTERED, faceOf, type Offset, readingError } from "../../src/fitting/offCenter";
import { judgeOffset } from "../../src/fitting/teaching/judgeOffset";
import { type Chance, seededChance } from "../../src/statistics/chance";
import { drawNormal } from "../../src/statistics/drawNormal";

const N = 100;
const RADIUS_mm = 40;
const EYE = 0.02;

/** Readings at the four marks, some rounds of them. */
function read(ring: Offset, turned: number, rounds: number, chance: Chance) {
  const face = faceOf(N, RADIUS_mm, ring);
  return Array.from({ length: 4 * rounds }, (_, k) => {
    const place = (k % 4) * 25;
    return { place, error: drawNormal(chance, readingError(face, place, 0) - turned, EYE) };
  });
}

const offset = fc.record({
  x_mm: fc.double({ min: -1, max: 1, noNaN: true }),
  y_mm: fc.double({ min: -1, max: 1, noNaN: true }),
});

test("an estimate by the rule of opposite marks agrees; one that is a millimeter off differs; one round cannot tell", () => {
  fc.assert(
    fc.property(
      offset,
      fc.double({ min: -3, max: 3, noNaN: true }),
      fc.integer({ min: 2, max: 5 }),
      fc.nat(),
      (ring, turned, rounds, seed) => {
        const readings = read(ring, turned, rounds, seededChance(seed));
        const mm = (2 * Math.PI * RADIUS_mm) / N;
        const mean = (place: number) =>
          readings.filter((one) => one.place === place).reduce((sum, { error }) => sum + error, 0) / rounds;
        const own = { x_mm: (mm * (mean(0) - mean(50))) / 2, y_mm: (mm * (mean(75) - mean(25))) / 2 };
        const judged = judgeOffset(own, readings, RADIUS_mm, N);
        expect(judged.verdict).toBe("agrees");
        expect(judged.away_mm).toBeLessThan(0.05);
        const wrong = { ...own, x_mm: own.x_mm + 1 };
        expect(judgeOffset(wrong, readings, RADIUS_mm, N).verdict).toBe("differs");
        expect(judgeOffset(wrong, readings.slice(0, 4), RADIUS_mm, N).verdict).toBe("cannot-tell");
      },
    ),
    { numRuns: 300 },
  );
});

test("the truth itself is agreed with in 95 of 100 sets of readings", () => {
  const chance = seededChance(11);
  const sets = 3000;
  const ring = { x_mm: 0.4, y_mm: -0.6 };
  const agreed = Array.from({ length: sets }, () => judgeOffset(ring, read(ring, 1, 2, chance), RADIUS_mm, N));
  const share = agreed.filter(({ verdict }) => verdict === "agrees").length / sets;
  // Four standard errors of a share of 0.95.
  expect(Math.abs(share - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / sets));
  expect(judgeOffset(CENTERED, read(ring, 1, 2, chance), RADIUS_mm, N).verdict).toBe("differs");
});

test("a gap read from the side is the gap", () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 3, noNaN: true }), fc.constantFrom(-30, -15, 15, 30), (gap_mm, angle) => {
      expect(gapFromSide(parallaxError(gap_mm, angle, RADIUS_mm, N), angle, RADIUS_mm, N)).toBeCloseTo(gap_mm, 9);
    }),
  );
});
