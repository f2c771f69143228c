import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { SteadySteps } from "../../../src/realdial/wire/steadySteps";

const steadied = (counts: readonly number[]) => {
  const steady = new SteadySteps();
  return counts.map((count) => steady.take(count));
};

describe("a count that flickers", () => {
  test.each([
    { why: "is taken as it is while it runs on", counts: [1, 2, 9, 40], taken: [1, 2, 9, 40] },
    { why: "is held at the edge of a step", counts: [5, 4, 5, 4, 5], taken: [5, 5, 5, 5, 5] },
    { why: "is held the other way too", counts: [-5, -4, -5, -4], taken: [-5, -5, -5, -5] },
    { why: "goes on from the edge", counts: [5, 4, 6], taken: [5, 5, 6] },
    { why: "turns back in full from the second step on", counts: [5, 4, 3, 2, 3], taken: [5, 5, 3, 2, 2] },
  ])("$why", ({ counts, taken }) => {
    expect(steadied(counts)).toEqual(taken);
  });

  test("is never off by more than a step, and turns back no more often than the hand", () => {
    const walk = fc.array(fc.integer({ min: -3, max: 3 }), { maxLength: 200 });
    fc.assert(
      fc.property(walk, (moves) => {
        let count = 0;
        const counts = moves.map((by) => {
          count += by;
          return count;
        });
        const taken = steadied(counts);
        for (const [k, one] of taken.entries()) expect(Math.abs(one - (counts[k] ?? 0))).toBeLessThanOrEqual(1);
        expect(turnsBack(taken)).toBeLessThanOrEqual(turnsBack(counts));
      }),
    );
  });
});

/** How often a row of counts changes its direction. */
function turnsBack(counts: readonly number[]): number {
  const ways = counts.map((count, k) => Math.sign(count - (counts[k - 1] ?? 0))).filter((way) => way !== 0);
  return ways.filter((way, k) => k > 0 && way !== ways[k - 1]).length;
}
