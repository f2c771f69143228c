import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pulled, released, THROWN, travelOf } from "../../../src/fitting/instruments/boltPull";

const TRAVEL = travelOf(100);
const sixtyFourths = (low: number, high: number) => fc.integer({ min: low * 64, max: high * 64 }).map((n) => n / 64);
const held = sixtyFourths(0, 10);

describe("a bolt that a hand draws", () => {
  test("comes with the hand where nothing holds it, and both stops hold the hand", () => {
    fc.assert(
      fc.property(fc.array(sixtyFourths(-30, 30)), (moves) => {
        let bolt = THROWN;
        let wanted = 0;
        for (const by of moves) {
          bolt = pulled(bolt, by, 0, TRAVEL);
          wanted = Math.min(TRAVEL, Math.max(0, wanted + by));
          expect(bolt.dial).toBeCloseTo(wanted, 6);
          expect(bolt.hand).toBeCloseTo(bolt.dial, 6);
        }
      }),
    );
  });

  test("takes a hand farther by what holds it; the more holds it, the less it comes", () => {
    fc.assert(
      fc.property(held, held, sixtyFourths(0, 40), (one, other, by) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        expect(pulled(THROWN, by, more, TRAVEL).dial).toBeLessThanOrEqual(pulled(THROWN, by, less, TRAVEL).dial);
        expect(pulled(THROWN, TRAVEL + more, more, TRAVEL).dial).toBeCloseTo(TRAVEL, 6);
        expect(pulled(THROWN, more, more, TRAVEL).dial).toBe(0);
      }),
    );
  });

  test("stays where it is when the hand lets go, and each pull begins with what holds it", () => {
    fc.assert(
      fc.property(held, sixtyFourths(0, 12), (holds, by) => {
        const first = pulled(THROWN, by, holds, TRAVEL);
        const second = released(first);
        expect(second.dial).toBe(first.dial);
        expect(pulled(second, holds, holds, TRAVEL).dial).toBeCloseTo(first.dial, 6);
      }),
    );
  });
});
