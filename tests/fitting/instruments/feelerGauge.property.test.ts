import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { inTheTray } from "../../../src/fitting/assembly";
import { LEAF_PLACES, LEAVES_mm, thickestLeaf } from "../../../src/fitting/fitCheck";
import { gapAround, gapOf, lockWith } from "../../../src/fitting/fittedLock";
import { isGapFound, type LeafTry, tryLeaf } from "../../../src/fitting/instruments/feelerGauge";
import { shippedProfile } from "../../../src/lock/shippedProfiles";

const gaps = fc.double({ min: 0, max: 4, noNaN: true });
const lock = lockWith(shippedProfile("three-wheel"), 0);
const bends = fc.record({
  x_mm: fc.double({ min: -1.2, max: 1.2, noNaN: true }),
  y_mm: fc.double({ min: -1.2, max: 1.2, noNaN: true }),
});

describe("a feeler gauge", () => {
  test("has leaves in order, each once, and a thicker leaf never goes in where a thinner one does not", () => {
    expect([...new Set(LEAVES_mm)].sort((a, b) => a - b)).toEqual(LEAVES_mm);
    fc.assert(
      fc.property(gaps, (gap_mm) => {
        const feels = LEAVES_mm.map((leaf_mm) => tryLeaf(leaf_mm, gap_mm));
        const order = ["loose", "drags", "does-not-go"];
        expect([...feels].sort((a, b) => order.indexOf(a) - order.indexOf(b))).toEqual(feels);
        expect(LEAVES_mm.filter((_, k) => feels[k] !== "does-not-go").at(-1) ?? 0).toBe(thickestLeaf(gap_mm));
      }),
    );
  });

  test.each([
    [0.3, 0.5, "loose"],
    [0.5, 0.5, "drags"],
    [0.5, 0.52, "drags"],
    [0.5, 0.54, "loose"],
    [0.5, 0.49, "does-not-go"],
  ] as const)("a leaf of %f mm in a gap of %f mm: %s", (leaf_mm, gap_mm, feel) => {
    expect(tryLeaf(leaf_mm, gap_mm)).toBe(feel);
  });

  test("finds a gap by two neighbors alone: the thickest that goes in and the next one", () => {
    fc.assert(
      fc.property(gaps, fc.subarray([...LEAVES_mm]), (gap_mm, tried) => {
        const tries = tried.map((leaf_mm): LeafTry => ({ place: "left", leaf_mm, feel: tryLeaf(leaf_mm, gap_mm) }));
        const k = LEAVES_mm.indexOf(thickestLeaf(gap_mm));
        const needed = [LEAVES_mm[k], LEAVES_mm[k + 1]].filter((leaf_mm) => leaf_mm !== undefined);
        expect(isGapFound("left", tries)).toBe(needed.every((leaf_mm) => tried.includes(leaf_mm)));
        expect(isGapFound("right", tries)).toBe(false);
      }),
    );
  });
});

describe("the gap round a dial", () => {
  const gapsOf = (assembly: Parameters<typeof gapAround>[0]) =>
    LEAF_PLACES.map(({ part }) => gapAround(assembly, lock, part));

  test("is the same all round with a straight spindle, whatever the ring's offset", () => {
    const ring = { offset: { x_mm: 0.7, y_mm: -0.4 }, turned: 0, isTight: true };
    const assembly = { ...inTheTray(88.5), body: "by-all" as const, ring, dialIn: 600 };
    const gap_mm = gapOf(lock, 88.5, 600);
    expect(gapsOf(assembly)).toEqual([gap_mm, gap_mm, gap_mm, gap_mm]);
  });

  test("is as much less on one side of a bent spindle as it is more on the other, by the radius times its lean", () => {
    fc.assert(
      fc.property(bends, (bend) => {
        const [top = 0, right = 0, bottom = 0, left = 0] = gapsOf({ ...inTheTray(92, bend), dialIn: 600 });
        const gap_mm = gapOf(lock, 92, 600);
        expect((top + bottom) / 2).toBeCloseTo(gap_mm, 9);
        expect((left + right) / 2).toBeCloseTo(gap_mm, 9);
        expect(Math.hypot(top - bottom, right - left) / 2).toBeCloseTo(
          40 * 0.0035 * Math.hypot(bend.x_mm, bend.y_mm),
          9,
        );
      }),
    );
  });

  test("is less at the bottom of a dial whose body hangs by one screw", () => {
    const [top = 0, right = 0, bottom = 0] = gapsOf({ ...inTheTray(92), body: "by-one", dialIn: 600 });
    expect(bottom).toBeLessThan(right);
    expect(top).toBeGreaterThan(right);
  });
});
