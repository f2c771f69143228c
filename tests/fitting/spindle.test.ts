import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { keyPlaces } from "../../src/fitting/geometry/keywayPuzzle";
import { spindleEnd, spindleLength, standsOut } from "../../src/fitting/geometry/spindleLength";
import { gapAfter, leadOf } from "../../src/fitting/geometry/spindleThread";

describe("the spindle's thread", () => {
  test("turned in and out again leaves the gap as it was", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5, noNaN: true }), fc.integer({ min: -8, max: 8 }), (gap, quarters) => {
        const there = gapAfter(gap, quarters / 4, leadOf(40));
        expect(gapAfter(there, -quarters / 4, leadOf(40))).toBeCloseTo(gap, 12);
      }),
    );
  });
});

describe("gap and keyway are one puzzle", () => {
  const puzzle = fc.record({
    perTurn: fc.constantFrom(50, 60, 100),
    gap_mm: fc.double({ min: 0, max: 6, noNaN: true }),
    lead_mm: fc.constantFrom(0.5, leadOf(40), leadOf(32), 1),
    gapLimits_mm: fc.constantFrom([0.2, 0.9] as const, [0.25, 0.7] as const, [0, 2] as const),
    keyways: fc.integer({ min: 1, max: 6 }),
    toFirst: fc.integer({ min: 0, max: 49 }),
  });

  test("its places are those that trying every keyway in eighty turns finds", () => {
    fc.assert(
      fc.property(puzzle, (one) => {
        const { perTurn, gap_mm, lead_mm, gapLimits_mm, keyways, toFirst } = one;
        const [least, most] = gapLimits_mm;
        const isClose = (turnedIn: number, slack: number) => {
          const gap = gap_mm - (turnedIn / perTurn) * lead_mm;
          return gap >= least - slack && gap <= most + slack;
        };
        const all = Array.from({ length: 80 * keyways }, (_, n) => toFirst + ((n - 40 * keyways) * perTurn) / keyways);
        const count = (slack: number) => all.filter((turnedIn) => isClose(turnedIn, slack)).length;
        const places = keyPlaces(one);
        // Places on a limit itself may go either way by rounding.
        expect(places.length).toBeGreaterThanOrEqual(count(-1e-9));
        expect(places.length).toBeLessThanOrEqual(count(1e-9));
        expect(places.every(({ turnedIn }) => isClose(turnedIn, 1e-9))).toBe(true);
      }),
    );
  });

  test("what a keyway puts the numbers off is the part of a turn that it is away from the right one", () => {
    fc.assert(
      fc.property(puzzle, (one) => {
        for (const { turnedIn, keyway, numbersOff } of keyPlaces(one)) {
          const turns = (turnedIn - one.toFirst - numbersOff) / one.perTurn;
          expect(turns).toBeCloseTo(Math.round(turns), 9);
          expect(numbersOff).toBeCloseTo((keyway * one.perTurn) / one.keyways, 12);
        }
      }),
    );
  });

  test("limits wider than the lead always hold a place in the right keyway", () => {
    fc.assert(
      fc.property(puzzle, (one) => {
        const places = keyPlaces({ ...one, gapLimits_mm: [0.2, 0.2 + one.lead_mm + 1e-6] });
        expect(places.some(({ keyway }) => keyway === 0)).toBe(true);
      }),
    );
  });

  test("a key one keyway on of four puts every number a quarter turn off", () => {
    const places = keyPlaces({
      perTurn: 100,
      gap_mm: 2,
      lead_mm: 0.635,
      gapLimits_mm: [0.2, 0.9],
      keyways: 4,
      toFirst: 0,
    });
    expect(places.map(({ turnedIn, keyway, numbersOff }) => [turnedIn, keyway, numbersOff])).toEqual([
      [275, 3, 75],
      [250, 2, 50],
      [225, 1, 25],
      [200, 0, 0],
      [175, 3, 75],
    ]);
  });
});

describe("the spindle's length", () => {
  const through = { ring_mm: 12, door_mm: 45, plate_mm: 3, body_mm: 28 };

  test("is all that it goes through", () => {
    expect(spindleLength(through, 0.5)).toBe(88.5);
    expect(standsOut(through, 0.5, 88.5)).toBe(0);
  });

  test.each([
    [-2.01, "too-short"],
    [-2, "holds"],
    [0, "holds"],
    [1.5, "holds"],
    [1.51, "too-long"],
  ] as const)("standing %f mm out of the cam is %s", (out, end) => {
    expect(spindleEnd(out, [-2, 1.5])).toBe(end);
  });
});
