import fc from "fast-check";
import { Matrix } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { gapFromSide, largestAngle, parallaxError } from "../../src/fitting/geometry/parallax";
import { bindsBy } from "../../src/fitting/geometry/strikeFit";
import { stackFit, type Washer } from "../../src/fitting/washerStack";

/** A second way: how far to the right an eye sees a place, the world turned by a matrix until the eye is straight in front. */
function seenAcross(angle_deg: number, place: readonly [right: number, up: number, near: number]): number {
  const a = (angle_deg * Math.PI) / 180;
  const turned = new Matrix([
    [Math.cos(a), 0, -Math.sin(a)],
    [0, 1, 0],
    [Math.sin(a), 0, Math.cos(a)],
  ]).mmul(Matrix.columnVector([...place]));
  return turned.get(0, 0);
}

describe("an eye off the axis", () => {
  const look = fc.record({
    gap_mm: fc.double({ min: 0.01, max: 3, noNaN: true }),
    angle_deg: fc.double({ min: 1, max: 80, noNaN: true }),
    side: fc.constantFrom(-1, 1),
    radius_mm: fc.double({ min: 20, max: 60, noNaN: true }),
    perTurn: fc.constantFrom(50, 60, 100),
  });

  test("sees the mark that it reads in line with the index, and its error tells the gap", () => {
    fc.assert(
      fc.property(look, ({ gap_mm, angle_deg, side, radius_mm, perTurn }) => {
        const eye_deg = side * angle_deg;
        const error = parallaxError(gap_mm, eye_deg, radius_mm, perTurn);
        const mark = [radius_mm * Math.tan((2 * Math.PI * error) / perTurn), radius_mm, gap_mm] as const;
        expect(seenAcross(eye_deg, mark)).toBeCloseTo(seenAcross(eye_deg, [0, radius_mm, 0]), 9);
        expect(gapFromSide(error, eye_deg, radius_mm, perTurn)).toBeCloseTo(gap_mm, 9);
      }),
    );
  });

  test("reads right without a gap, on the axis, and on a dial without end", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 3, noNaN: true }),
        fc.double({ min: -80, max: 80, noNaN: true }),
        (gap, angle) => {
          expect(parallaxError(0, angle, 40, 100)).toBeCloseTo(0, 12);
          expect(parallaxError(gap, 0, 40, 100)).toBeCloseTo(0, 12);
          expect(Math.abs(parallaxError(gap, angle, 1e9, 100))).toBeLessThan(1e-6);
          expect(parallaxError(gap, -angle, 40, 100)).toBeCloseTo(-parallaxError(gap, angle, 40, 100), 12);
        },
      ),
    );
  });

  test("reads 0.25 wrong over a gap of 0.63 mm at 45 degrees on a dial of 40 mm, by hand", () => {
    // One graduation of 100 is 2 pi 40 / 100 = 2.513 mm there, and 0.63 tan 45 is 0.63 mm.
    expect(parallaxError(0.63, 45, 40, 100)).toBeCloseTo(0.2507, 3);
  });

  test("may lean as far as its error stays within a limit, and no farther", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        fc.double({ min: 0.01, max: 2, noNaN: true }),
        (gap, limit) => {
          expect(parallaxError(gap, largestAngle(gap, limit, 40, 100), 40, 100)).toBeCloseTo(limit, 9);
        },
      ),
    );
    expect(largestAngle(0, 0.1, 40, 100)).toBe(90);
  });
});

describe("washers", () => {
  const SIZES = {
    flat_mm: 0.5,
    springFree_mm: 1.4,
    springFlat_mm: 0.5,
    springRate_N_mm: 12,
    room_mm: 2,
    frictionFlat: 0.15,
    frictionEdge: 0.45,
  };
  const of = (...stack: Washer[]) => stackFit(stack, SIZES);

  test.each([
    ["none: the dial moves by the whole room", of(), { endPlay_mm: 2, force_N: 0, friction_N: 0 }],
    ["a spring alone does not reach", of("spring"), { endPlay_mm: 0.6, force_N: 0, friction_N: 0 }],
    ["two flat ones leave play", of("flat", "flat"), { endPlay_mm: 1, force_N: 0, friction_N: 0 }],
    // 0.5 + 0.5 + 1.4 - 2 = 0.4 mm pressed, times 12 N/mm.
    ["flat, flat, spring: none", of("flat", "flat", "spring"), { endPlay_mm: 0, force_N: 4.8, friction_N: 0.72 }],
    [
      "the spring first scrapes the cam",
      of("spring", "flat", "flat"),
      { endPlay_mm: 0, force_N: 4.8, friction_N: 2.16 },
    ],
    // 0.5 + 1.4 + 1.4 - 2 = 1.3 mm, at half the rate.
    ["two springs share their way", of("flat", "spring", "spring"), { endPlay_mm: 0, force_N: 7.8, friction_N: 1.17 }],
  ])("%s", (_, found, is) => {
    for (const key of ["endPlay_mm", "force_N", "friction_N"] as const) expect(found[key]).toBeCloseTo(is[key], 9);
  });

  test("too many do not go in", () => {
    expect(of("flat", "flat", "flat", "flat", "flat").force_N).toBe(Number.POSITIVE_INFINITY);
  });

  test("fill their room: each spring gives way to the same force, and no play is less than none", () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom<Washer>("flat", "spring"), { maxLength: 5 }), (stack) => {
        const { endPlay_mm, force_N } = of(...stack);
        if (force_N === Number.POSITIVE_INFINITY) return;
        const heights_mm = stack.map((one) => (one === "flat" ? SIZES.flat_mm : 1.4 - force_N / SIZES.springRate_N_mm));
        expect(heights_mm.reduce((sum, one) => sum + one, endPlay_mm)).toBeCloseTo(SIZES.room_mm, 9);
        expect(Object.is(Math.min(endPlay_mm, force_N), 0)).toBe(true);
      }),
    );
  });

  test("another washer never gives more play, and never less force", () => {
    const stack = fc.array(fc.constantFrom<Washer>("flat", "spring"), { maxLength: 4 });
    fc.assert(
      fc.property(stack, fc.constantFrom<Washer>("flat"), (one, more) => {
        const [before, after] = [of(...one), of(...one, more)];
        expect(after.endPlay_mm).toBeLessThanOrEqual(before.endPlay_mm);
        expect(after.force_N).toBeGreaterThanOrEqual(before.force_N);
      }),
    );
  });
});

describe("bolt and strike", () => {
  /** Hundredths of a millimeter: doubles drawn as such are nearly all next to nothing. */
  const mm = (min: number, max: number) => fc.integer({ min: 100 * min, max: 100 * max }).map((part) => part / 100);

  test("what runs on the edge of a hole that is no smaller than the bolt is what lies beside it, counted in thousandths", () => {
    fc.assert(
      fc.property(mm(4, 30), mm(0, 6), mm(-40, 40), (bolt_mm, play_mm, above_mm) => {
        const hole_mm = bolt_mm + play_mm;
        const steps = 20_000;
        let inside = 0;
        for (let k = 0; k < steps; k++) {
          const at = -bolt_mm / 2 + ((k + 0.5) / steps) * bolt_mm;
          if (Math.abs(at - above_mm) <= hole_mm / 2) inside += 1;
        }
        expect(bindsBy({ bolt_mm, hole_mm, above_mm })).toBeCloseTo((1 - inside / steps) * bolt_mm, 2);
      }),
      { numRuns: 60 },
    );
  });
});
