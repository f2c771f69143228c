import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { DeadBand } from "../../../src/realdial/motion/deadBand";

const FRAME_MS = 1000 / 30;

/** What becomes of positions, a frame each. */
function banded(positions: readonly number[]): number[] {
  const band = new DeadBand();
  return positions.map((position, k) => band.take(position, k * FRAME_MS));
}

const changes = (positions: readonly number[]) =>
  positions.filter((one, k) => k > 0 && one !== positions[k - 1]).length;

describe("a dial at rest", () => {
  test("does not move while readings flicker", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -29, max: 29 }), { minLength: 2 }), (flicker) => {
        expect(changes(banded([20, ...flicker.map((one) => 20 + one / 1000)]))).toBe(0);
      }),
    );
  });

  test("is followed when it is moved by a tenth", () => {
    expect(banded([20, 20.1, 20.11, 20.01])).toEqual([20, 20.1, 20.1, 20.01]);
  });
});

describe("a running dial", () => {
  test("does not turn back for a reading that falls short", () => {
    expect(banded([0, 5, 10, 15, 14.8, 20])).toEqual([0, 5, 10, 15, 15, 20]);
  });

  // 1.4 graduations a frame are 42 a second, 1.3 are 39.
  test.each([
    ["runs", 1.4, 2.8],
    ["is still slow", 1.3, 2.4],
  ])("that turns by 40 graduations a second %s", (_, by, then) => {
    expect(banded([0, by, 2 * by, 2 * by - 0.2]).at(-1)).toBeCloseTo(then, 9);
  });

  test("turns back when the hand does", () => {
    expect(banded([0, 5, 10, 12, 11.5, 8])).toEqual([0, 5, 10, 12, 11.5, 8]);
  });
});

test("it is never farther from the reading than the wider band", () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: -50, max: 50, noNaN: true })), (positions) => {
      for (const [k, one] of banded(positions).entries())
        expect(Math.abs(one - (positions[k] as number))).toBeLessThan(0.4);
    }),
  );
});

test("taken up anew, it is where the dial is", () => {
  const band = new DeadBand();
  band.take(3, 0);
  band.reset();
  expect(band.take(3.01, 10)).toBe(3.01);
});
