import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { inTheTray } from "../../src/fitting/assembly";
import { fitOf } from "../../src/fitting/fit";
import { keywayAt, lockWith } from "../../src/fitting/fittedLock";
import { contactArc, keyLift } from "../../src/fitting/keySeat";
import { gateDepth, turnedParts } from "../../src/fitting/teaching/turnedParts";
import { wrap } from "../../src/lock/dial";
import { shippedProfile } from "../../src/lock/shippedProfiles";

const PROFILE = shippedProfile("three-wheel");
const lockAt = (slotAt: number) => lockWith(PROFILE, slotAt);
const slotAts = fc.integer({ min: 0, max: 99 });

/** A lock that is together, its key in a keyway. */
function keyed(slotAt: number, keyway: number, isSeated: boolean) {
  const lock = lockAt(slotAt);
  const dialIn = slotAt + (keyway * lock.perTurn) / lock.sizes.keyways + 1000;
  const assembly = {
    ...inTheTray(88.5),
    ring: { offset: { x_mm: 0, y_mm: 0 }, turned: 0, isTight: true },
    body: "by-all" as const,
    dialIn,
    key: { keyway, isSeated, screw: "firm" as const },
  };
  return { lock, assembly };
}

describe("a lock that is turned", () => {
  test("has its gate under the nose where the dial reads zero less what its keyway puts it off, as the fit says", () => {
    fc.assert(
      fc.property(slotAts, fc.integer({ min: 0, max: 3 }), (slotAt, keyway) => {
        const { lock, assembly } = keyed(slotAt, keyway, true);
        const { dial, cam, noseIn } = turnedParts(assembly, lock, 0);
        expect({ cam, noseIn }).toEqual({ cam: 0, noseIn: 1 });
        expect(dial).toBeCloseTo(-(fitOf(assembly, lock)?.numbersOff ?? Number.NaN), 9);
      }),
    );
  });

  test("goes round as one: dial, cam and key by the same, and after a whole turn everything is where it was", () => {
    fc.assert(
      fc.property(slotAts, fc.double({ min: -300, max: 300, noNaN: true }), (slotAt, by) => {
        const { lock, assembly } = keyed(slotAt, 0, false);
        const [before, after] = [turnedParts(assembly, lock, 0), turnedParts(assembly, lock, by)];
        expect(after.dial - before.dial).toBeCloseTo(by, 6);
        expect(after.cam - before.cam).toBeCloseTo(by, 6);
        expect(before.slot - after.slot).toBeCloseTo(by, 6);
        const round = turnedParts(assembly, lock, by + lock.perTurn);
        expect(round.noseIn).toBeCloseTo(after.noseIn, 6);
        expect(round.lift_mm).toBeCloseTo(after.lift_mm, 6);
      }),
    );
  });

  test("lifts the lever with a proud key exactly while the key is against it, and never with one that is home", () => {
    const sizes = fc.record({
      keyAt_mm: fc.double({ min: 5, max: 20, noNaN: true }),
      headRadius_mm: fc.double({ min: 0.5, max: 3, noNaN: true }),
      leverAt_mm: fc.double({ min: 5, max: 25, noNaN: true }),
    });
    fc.assert(
      fc.property(sizes, fc.double({ min: -50, max: 50, noNaN: true }), (one, off) => {
        const half = contactArc(one, 100) / 2;
        fc.pre(Math.abs(Math.abs(off) - half) > 1e-6);
        expect(keyLift(one, off, 100) > 0).toBe(Math.abs(off) < half);
      }),
    );
    const round = Array.from({ length: 100 }, (_, k) => k);
    const lifts = (isSeated: boolean) => {
      const { lock, assembly } = keyed(7, 0, isSeated);
      return round.filter((turned) => turnedParts(assembly, lock, turned).lift_mm > 0);
    };
    expect(lifts(true)).toEqual([]);
    expect(lifts(false)).toContain(50);
    expect(lifts(false)).not.toContain(0);
  });

  test("without a key has the dial's zero at the top where the first keyway lines up, and the cam at rest", () => {
    fc.assert(
      fc.property(slotAts, fc.integer({ min: 0, max: 2000 }), (slotAt, dialIn) => {
        const { lock, assembly } = keyed(slotAt, 0, true);
        const { dial, cam } = turnedParts({ ...assembly, key: null, dialIn }, lock, 40);
        expect(cam).toBe(0);
        if (Math.abs(wrap(dial, lock.perTurn)) <= lock.sizes.keyReach) expect(keywayAt(lock, dialIn)).toBe(0);
      }),
    );
  });

  test.each([
    [0, 1],
    [2, 1],
    [-3, 0.5],
    [4, 0],
    [50, 0],
    [97, 0.5],
  ])("is cut at %d graduations from the middle of its gate by %d of its depth", (off, depth) => {
    expect(gateDepth(off, 100)).toBeCloseTo(depth, 9);
  });
});
