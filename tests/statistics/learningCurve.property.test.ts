import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitLearningCurve, learningCurveValue } from "../../src/statistics/learningCurve";
import { normalQuantile } from "../../src/statistics/normalDistribution";
import { StatisticsError } from "../../src/statistics/statisticsError";
import { seeded } from "../support/seeded";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const curve = fc.record({
  asymptote: between(-50, 50),
  gap: between(1, 100).chain((size) => fc.constantFrom(size, -size)),
  rate: between(0.05, 1),
  first: fc.integer({ min: 0, max: 1000 }),
});

const along = (truth: Parameters<typeof learningCurveValue>[0], length: number) =>
  Array.from({ length }, (_, i) => truth.first + i).map((number) => ({
    number,
    value: learningCurveValue(truth, number),
  }));

function fitted(attempts: Parameters<typeof fitLearningCurve>[0], level?: number) {
  const found = fitLearningCurve(attempts, level);
  if (found.kind !== "fitted") throw new Error(`not fitted: ${found.reason}`);
  return found;
}

test("a curve without scatter is found again, wherever practice began", () => {
  fc.assert(
    fc.property(curve, (truth) => {
      const found = fitted(along(truth, 30));
      const size = Math.abs(truth.gap);
      expect(Math.abs(found.asymptote - truth.asymptote)).toBeLessThan(1e-5 * size);
      expect(Math.abs(found.gap - truth.gap)).toBeLessThan(1e-5 * size);
      expect(Math.abs(found.rate / truth.rate - 1)).toBeLessThan(1e-5);
    }),
    { numRuns: 50 },
  );
});

const scattered = (random: () => number, scatter: number) => {
  const truth = { asymptote: 12, gap: 30, rate: 0.2, first: 1 };
  return along(truth, 25).map(({ number, value }) => ({
    number,
    value: value + scatter * normalQuantile(random() * 0.999998 + 1e-6),
  }));
};

test("no other curve nearby lies closer to the attempts", () => {
  const attempts = scattered(seeded(7), 1.5);
  const best = fitted(attempts);
  const squares = (other: typeof best) =>
    attempts.reduce((sum, { number, value }) => sum + (value - learningCurveValue(other, number)) ** 2, 0);
  for (const factor of [0.99, 1.01]) {
    expect(squares({ ...best, asymptote: best.asymptote * factor })).toBeGreaterThan(squares(best));
    expect(squares({ ...best, gap: best.gap * factor })).toBeGreaterThan(squares(best));
    expect(squares({ ...best, rate: best.rate * factor })).toBeGreaterThan(squares(best));
  }
});

test("the order of the attempts does not matter", () => {
  const attempts = scattered(seeded(3), 1);
  expect(fitted(attempts.toReversed()).asymptote).toBeCloseTo(fitted(attempts).asymptote, 6);
});

test("the asymptote's interval holds the true asymptote about as often as its level says", () => {
  const random = seeded(2);
  const held = Array.from({ length: 400 }, () => fitted(scattered(random, 1), 0.9).asymptoteInterval).filter(
    ({ low, high }) => low <= 12 && 12 <= high,
  ).length;
  // 360 expected, and four standard deviations of chance are 24.
  expect(held).toBeGreaterThanOrEqual(336);
  expect(held).toBeLessThanOrEqual(384);
});

describe("attempts that support no curve say why", () => {
  const numbered = (values: readonly number[]) => values.map((value, i) => ({ number: i + 1, value }));
  test.each([
    ["none at all", [], "too-few-attempts"],
    ["four", [9, 5, 3, 2], "too-few-attempts"],
    ["all the same", [4, 4, 4, 4, 4, 4], "no-trend"],
    ["scatter about a level", [3, 5, 4, 6, 3, 4, 5, 4, 3, 5], "no-trend"],
    ["a straight line", [10, 9, 8, 7, 6, 5, 4], "no-plateau"],
    ["still improving, faster and faster", [20, 19.8, 19.1, 17.5, 15, 11, 5], "no-plateau"],
    ["one jump", [20, 4.1, 3.9, 4, 4.05, 3.95, 4.02], "too-sudden"],
  ] as const)("%s: %o is %s", (_why, values, reason) => {
    expect(fitLearningCurve(numbered(values))).toEqual({ kind: "unsupported", reason });
  });

  test("a straight line so long that its bend would look well known", () => {
    const line = Array.from({ length: 2000 }, (_, i) => 4000 - i);
    expect(fitLearningCurve(numbered(line))).toEqual({ kind: "unsupported", reason: "no-plateau" });
  });

  test("many attempts, but only three numbers", () => {
    const attempts = [1, 2, 3, 1, 2, 3].map((number) => ({ number, value: 10 / number }));
    expect(fitLearningCurve(attempts)).toEqual({ kind: "unsupported", reason: "too-few-attempts" });
  });
});

test("any attempts at all get an answer without NaN", () => {
  const value = fc.integer({ min: -100, max: 100 });
  const attempts = fc.array(fc.record({ number: fc.integer({ min: 1, max: 40 }), value }), { maxLength: 20 });
  fc.assert(
    fc.property(attempts, (some) => {
      const found = fitLearningCurve(some);
      if (found.kind === "unsupported") return;
      const { low, high } = found.asymptoteInterval;
      for (const number of [found.asymptote, found.gap, found.rate, low, high])
        expect(number).toSatisfy(Number.isFinite);
      expect(found.rate).toBeGreaterThan(0);
    }),
    { numRuns: 200 },
  );
});

test("an attempt that is no number is an error, not an answer", () => {
  const broken = [{ number: 1, value: Number.NaN }];
  expect(() => fitLearningCurve(broken)).toThrow(StatisticsError);
  expect(() => fitLearningCurve(broken)).toThrow(expect.objectContaining({ code: "not-finite" }));
});

test("values apart by less than can be squared are no curve", () => {
  const attempts = [0, 2e-162, 0, 0, 0].map((value, k) => ({ number: k + 1, value }));
  expect(fitLearningCurve(attempts).kind).toBe("unsupported");
});
