import fc from "fast-check";
import { Matrix } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { CENTERED, type FaceInRing, firstOrderError, readingAt, readingError } from "../../src/fitting/offCenter";

const millimeters = fc.double({ min: -1.5, max: 1.5, noNaN: true });
const offset = fc.record({ x_mm: millimeters, y_mm: millimeters });
const face = fc.record({
  perTurn: fc.constantFrom(50, 60, 100),
  radius_mm: fc.double({ min: 20, max: 60, noNaN: true }),
  ring: offset,
  dial: offset,
});
const angle = fc.double({ min: -250, max: 250, noNaN: true });

/** A second way: the whole face turned by matrices into the dial's own frame, and the angle of the index read there. */
function readByMatrices({ perTurn, radius_mm, ring, dial }: FaceInRing, place: number, position: number): number {
  const turn = (graduations: number) => {
    const a = (2 * Math.PI * graduations) / perTurn;
    // Columns are what becomes of right and up under a turn to the left.
    return new Matrix([
      [Math.cos(a), -Math.sin(a)],
      [Math.sin(a), Math.cos(a)],
    ]);
  };
  const vector = (x: number, y: number) => Matrix.columnVector([x, y]);
  const index = turn(-place).mmul(vector(0, radius_mm)).add(vector(ring.x_mm, ring.y_mm));
  const inDial = turn(-position).mmul(index).sub(vector(dial.x_mm, dial.y_mm));
  return (Math.atan2(inDial.get(0, 0), inDial.get(1, 0)) * perTurn) / (2 * Math.PI);
}

const apart = (a: number, b: number, perTurn: number) => {
  const rest = (((a - b) % perTurn) + perTurn) % perTurn;
  return Math.min(rest, perTurn - rest);
};

describe("what an index reads off the axis", () => {
  test("is the angle that matrices turn it to", () => {
    fc.assert(
      fc.property(face, angle, angle, (one, place, position) => {
        const { perTurn } = one;
        expect(apart(readingAt(one, place, position), readByMatrices(one, place, position), perTurn)).toBeLessThan(
          1e-9,
        );
      }),
    );
  });

  test("is right without an offset, and the more so the larger the ring", () => {
    fc.assert(
      fc.property(face, angle, angle, (one, place, position) => {
        expect(readingError({ ...one, ring: CENTERED, dial: CENTERED }, place, position)).toBeCloseTo(0, 12);
        expect(Math.abs(readingError({ ...one, radius_mm: 1e9 }, place, position))).toBeLessThan(1e-7);
      }),
    );
  });

  test("is the sine of the first order but for the square of offset over radius", () => {
    fc.assert(
      fc.property(face, angle, angle, (one, place, position) => {
        const size =
          (Math.hypot(one.ring.x_mm, one.ring.y_mm) + Math.hypot(one.dial.x_mm, one.dial.y_mm)) / one.radius_mm;
        const left = readingError(one, place, position) - firstOrderError(one, place, position);
        expect(Math.abs(left)).toBeLessThanOrEqual(size ** 2 * (one.perTurn / (2 * Math.PI)) * 1.5 + 1e-12);
      }),
    );
  });

  test("at two opposite places cancels to the first order: their mean is right", () => {
    fc.assert(
      fc.property(face, angle, angle, (one, place, position) => {
        const across = place + one.perTurn / 2;
        const mean = firstOrderError(one, place, position) + firstOrderError(one, across, position);
        expect(mean).toBeCloseTo(0, 9);
      }),
    );
  });

  test("is largest at two opposite places, too much at one and too little at the other, by the exact formula", () => {
    const offCenter = offset.filter(({ x_mm, y_mm }) => Math.hypot(x_mm, y_mm) > 0.05);
    fc.assert(
      fc.property(face, offCenter, (one, ring) => {
        const { perTurn, radius_mm } = one;
        const STEPS = 2000;
        const errors = Array.from({ length: STEPS }, (_, k) =>
          readingError({ ...one, ring, dial: CENTERED }, (k * perTurn) / STEPS, 0),
        );
        const [most, least] = [Math.max(...errors), Math.min(...errors)];
        const placeOf = (error: number) => (errors.indexOf(error) * perTurn) / STEPS;
        // Exact maxima lean from the opposite by twice asin(offset / radius); asin is the largest error itself.
        const lean = 2 * most + (2 * perTurn) / STEPS;
        expect(apart(placeOf(most), placeOf(least) + perTurn / 2, perTurn)).toBeLessThanOrEqual(lean);
        expect(most + least).toBeCloseTo(0, 4);
        const largest = (Math.asin(Math.hypot(ring.x_mm, ring.y_mm) / radius_mm) * perTurn) / (2 * Math.PI);
        expect(most).toBeCloseTo(largest, 4);
        // Between the two it only falls, then only rises: no third place.
        const ways = errors.map((error, k) => Math.sign(error - (errors.at(k - 1) ?? 0))).filter((way) => way !== 0);
        const turns = ways.filter((way, k) => way !== ways.at(k - 1));
        expect(turns.length).toBe(2);
      }),
    );
  });

  test("with the ring alone off is the same wherever the dial stands; with the dial off it goes round with it", () => {
    fc.assert(
      fc.property(face, angle, angle, (one, place, position) => {
        const ringOff = { ...one, dial: CENTERED };
        expect(readingError(ringOff, place, position)).toBe(readingError(ringOff, place, 0));
        const dialOff = { ...one, ring: CENTERED };
        const half = position + one.perTurn / 2;
        expect(firstOrderError(dialOff, place, position) + firstOrderError(dialOff, place, half)).toBeCloseTo(0, 9);
      }),
    );
  });
});

test("a ring of 40 mm that is 0.4 mm to the right reads 0.16 too much at its top and too little at its bottom", () => {
  // 100 / (2 pi) * 0.4 / 40 = 0.15915, by hand.
  const one = { perTurn: 100, radius_mm: 40, ring: { x_mm: 0.4, y_mm: 0 }, dial: CENTERED };
  expect(readingError(one, 0, 0)).toBeCloseTo(0.15915, 4);
  expect(readingError(one, 50, 0)).toBeCloseTo(-0.15915, 4);
  expect(readingError(one, 25, 0)).toBeCloseTo(0, 12);
  expect(readingError(one, 75, 0)).toBeCloseTo(0, 12);
});
