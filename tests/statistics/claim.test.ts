import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test, vi } from "vitest";
import published from "../../shared/published/zero-failure-sample-size.json" with { type: "json" };
import { claimAdvice, claimText, judgeClaim, trialsToShow } from "../../src/statistics/claim";

// A loaded machine must not make a property fail.
vi.setConfig({ testTimeout: 60_000 });

const CLAIM = { rate: 0.9, confidence: 0.9 };

describe("tries without a failure that show a claim (shared/published/zero-failure-sample-size.json)", () => {
  test.each(published.rows.map(({ confidence, reliability, trials }) => ({ confidence, rate: reliability, trials })))(
    "$rate at $confidence: $trials",
    ({ confidence, rate, trials }) => {
      expect(trialsToShow({ rate, confidence }, 0)).toBe(trials);
      expect(judgeClaim(trials, trials, { rate, confidence })).toBe("shown");
      expect(judgeClaim(trials - 1, trials - 1, { rate, confidence })).toBe("not shown");
    },
  );
});

test("a claim is shown where so good a result would be rare without it (binomial tail, jstat as the judge)", () => {
  const claim = fc.record({
    rate: fc.integer({ min: 50, max: 99 }).map((percent) => percent / 100),
    confidence: fc.integer({ min: 51, max: 99 }).map((percent) => percent / 100),
  });
  const counts = fc.integer({ min: 1, max: 60 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
  fc.assert(
    fc.property(claim, counts, ({ rate, confidence }, [right, n]) => {
      const atLeast = right === 0 ? 1 : 1 - jstat.binomial.cdf(right - 1, n, rate);
      const atMost = right === n ? 1 : jstat.binomial.cdf(right, n, rate);
      const margin = 1e-6;
      fc.pre(Math.abs(atLeast - (1 - confidence)) > margin && Math.abs(atMost - (1 - confidence)) > margin);
      const wanted = atLeast < 1 - confidence ? "shown" : atMost < 1 - confidence ? "ruled out" : "not shown";
      expect(judgeClaim(right, n, { rate, confidence })).toBe(wanted);
    }),
    { numRuns: 400 },
  );
});

test.each([0, 1, 2, 5])("with %i failures, the number of tries is the least that shows it", (failures) => {
  const trials = trialsToShow(CLAIM, failures);
  expect(judgeClaim(trials - failures, trials, CLAIM)).toBe("shown");
  expect(judgeClaim(trials - 1 - failures, trials - 1, CLAIM)).not.toBe("shown");
});

test("says so in words", () => {
  expect(claimText(CLAIM)).toBe("90 % with 90 % confidence");
  expect(claimAdvice(CLAIM)).toEqual([
    "22 of 22 shows 90 % with 90 % confidence.",
    "With one miss it takes 37 of 38, with two 50 of 52.",
  ]);
});

test("nothing tried shows nothing", () => {
  expect(judgeClaim(0, 0, CLAIM)).toBe("not shown");
});
