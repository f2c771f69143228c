import fc from "fast-check";
import { Box, Circle, Distance, DistanceInput, DistanceOutput, SimplexCache, Vec2 } from "planck";
import { describe, expect, test } from "vitest";
import { contactArc, playAfterUse, screwAfter } from "../../src/fitting/keySeat";

/** Distance between a key's head and the lever, by a rigid-body engine; 0 where they overlap. */
function apartByEngine(keyAt_mm: number, headRadius_mm: number, leverAt_mm: number, angle: number): number {
  const input = new DistanceInput();
  // The engine gives boxes a skin of its own; a circle of the head's size around its point is exact.
  const lever = new Box(200, 50, Vec2(0, leverAt_mm + 50));
  input.proxyA.set(new Circle(Vec2(keyAt_mm * Math.sin(angle), keyAt_mm * Math.cos(angle)), 0), 0);
  input.proxyB.set(lever, 0);
  input.transformA.setIdentity();
  input.transformB.setIdentity();
  input.useRadii = false;
  const output = new DistanceOutput();
  Distance(output, new SimplexCache(), input);
  return output.distance - headRadius_mm;
}

describe("a key that stands out of the cam", () => {
  const sizes = fc.record({
    keyAt_mm: fc.double({ min: 5, max: 15, noNaN: true }),
    headRadius_mm: fc.double({ min: 0.5, max: 3, noNaN: true }),
    leverAt_mm: fc.double({ min: 4, max: 25, noNaN: true }),
  });

  test("touches the lever exactly where a rigid-body engine says so", () => {
    fc.assert(
      fc.property(sizes, (one) => {
        const half = (contactArc(one, 100) * Math.PI) / 100;
        const angles = Array.from({ length: 101 }, (_, k) => ((k - 50) * Math.PI) / 50);
        const clear = angles.filter((angle) => Math.abs(Math.abs(angle) - half) > 1e-6);
        // The engine reckons in steps of 5 micrometers.
        const touches = (angle: number, slack: number) =>
          apartByEngine(one.keyAt_mm, one.headRadius_mm, one.leverAt_mm, angle) < slack;
        expect(clear.filter((angle) => Math.abs(angle) < half && !touches(angle, 0.006))).toEqual([]);
        expect(clear.filter((angle) => Math.abs(angle) > half && touches(angle, -0.006))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test.each([
    // By hand: acos((10 - 2) / 10) = 36.87 degrees either way, acos(0) = 90.
    [{ keyAt_mm: 10, headRadius_mm: 2, leverAt_mm: 10 }, (2 * 36.8699 * 100) / 360],
    [{ keyAt_mm: 10, headRadius_mm: 2, leverAt_mm: 2 }, 50],
    [{ keyAt_mm: 10, headRadius_mm: 2, leverAt_mm: 12 }, 0],
    [{ keyAt_mm: 10, headRadius_mm: 2, leverAt_mm: 30 }, 0],
    [{ keyAt_mm: 10, headRadius_mm: 25, leverAt_mm: 10 }, 100],
  ])("%o rides on it for %f graduations of 100", (one, arc) => {
    expect(contactArc(one, 100)).toBeCloseTo(arc, 3);
  });
});

test.each([
  [0, "loose"],
  [0.39, "loose"],
  [0.4, "firm"],
  [0.9, "firm"],
  [0.91, "stripped"],
] as const)("a key's screw turned with %f Nm is %s", (torque, is) => {
  expect(screwAfter(torque, [0.4, 0.9])).toBe(is);
});

test("play grows with use, never falls, and ends at its most", () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 2, noNaN: true }), fc.integer({ min: 0, max: 20_000 }), (fresh, turns) => {
      const now = playAfterUse(fresh, turns, 0.5, 3);
      expect(now).toBeGreaterThanOrEqual(fresh);
      expect(now).toBeLessThanOrEqual(Math.max(3, fresh));
      expect(playAfterUse(fresh, turns + 1, 0.5, 3)).toBeGreaterThanOrEqual(now);
    }),
  );
  expect(playAfterUse(0.25, 2000, 0.5, 3)).toBe(1.25);
});
