import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  conformanceVerdict,
  probabilityMeanConforms,
  probabilityOfConformance,
} from "../../src/statistics/conformance";
import { StatisticsError } from "../../src/statistics/statisticsError";

const grid = (min: number, max: number) => fc.integer({ min: min * 64, max: max * 64 }).map((n) => n / 64);
const knowledge = fc.record({ mean: grid(-10, 10), standardUncertainty: grid(0, 10) });
const limits = fc.tuple(grid(-10, 10), grid(0, 10)).map(([low, width]) => ({ low, high: low + width }));

describe("probability of conformance", () => {
  test("is a probability, and the outside has the rest", () => {
    fc.assert(
      fc.property(knowledge, limits, (known, { low, high }) => {
        fc.pre(known.standardUncertainty > 0);
        const inside = probabilityOfConformance(known, { low, high });
        const below = probabilityOfConformance(known, { low: -Infinity, high: low });
        const above = probabilityOfConformance(known, { low: high, high: Infinity });
        expect(inside).toBeGreaterThanOrEqual(0);
        expect(inside).toBeLessThanOrEqual(1);
        expect(inside + below + above).toBeCloseTo(1, 12);
      }),
    );
  });

  test("is the same in a mirror", () => {
    fc.assert(
      fc.property(knowledge, limits, ({ mean, standardUncertainty }, { low, high }) => {
        const mirrored = { low: 0 - high, high: 0 - low };
        const there = probabilityOfConformance({ mean: 0 - mean, standardUncertainty }, mirrored);
        expect(there).toBeCloseTo(probabilityOfConformance({ mean, standardUncertainty }, { low, high }), 12);
      }),
    );
  });

  test("is smaller for a mean known by few readings than for one known to the same uncertainty, if it conforms", () => {
    fc.assert(
      fc.property(grid(0, 1), fc.integer({ min: 2, max: 30 }), (deviation, count) => {
        fc.pre(deviation > 0);
        const within = { low: -1, high: 1 };
        const byT = probabilityMeanConforms({ count, mean: 0, standardDeviation: deviation }, within);
        const byNormal = probabilityOfConformance(
          { mean: 0, standardUncertainty: deviation / Math.sqrt(count) },
          within,
        );
        expect(byT).toBeLessThanOrEqual(byNormal + 1e-12);
      }),
    );
  });

  test.each([
    ["inside", 0, 1],
    ["on the limit", 1, 1],
    ["beyond", 1.5, 0],
  ])("without uncertainty is certain: %s", (_where, mean, probability) => {
    const within = { low: -1, high: 1 };
    expect(probabilityOfConformance({ mean, standardUncertainty: 0 }, within)).toBe(probability);
    expect(probabilityMeanConforms({ count: 3, mean, standardDeviation: 0 }, within)).toBe(probability);
  });

  test("keeps its digits far above the center", () => {
    const found = probabilityOfConformance({ mean: 0, standardUncertainty: 1 }, { low: 10, high: Infinity });
    expect(found.toExponential(2)).toBe("7.62e-24");
  });
});

describe("verdict", () => {
  test.each([
    [1, "accept"],
    [0.95, "accept"],
    [0.9499, "not shown yet"],
    [0.5, "not shown yet"],
    [0.0501, "not shown yet"],
    [0.05, "reject"],
    [0, "reject"],
  ])("at a risk of 5 %% a probability of %d means %s", (probability, verdict) => {
    expect(conformanceVerdict(probability, 0.05)).toBe(verdict);
  });

  test("never turns from accept to reject as more risk is taken", () => {
    const risk = fc.double({ min: 0.001, max: 0.499, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), risk, risk, (probability, a, b) => {
        const careful = conformanceVerdict(probability, Math.min(a, b));
        const bold = conformanceVerdict(probability, Math.max(a, b));
        if (careful !== "not shown yet") expect(bold).toBe(careful);
      }),
    );
  });
});

test.each([
  [
    "limits that hold nothing",
    () => probabilityOfConformance({ mean: 0, standardUncertainty: 1 }, { low: 1, high: 0 }),
    "bad-limits",
  ],
  [
    "a negative uncertainty",
    () => probabilityOfConformance({ mean: 0, standardUncertainty: -1 }, { low: 0, high: 1 }),
    "not-finite",
  ],
  [
    "one reading",
    () => probabilityMeanConforms({ count: 1, mean: 0, standardDeviation: 0 }, { low: 0, high: 1 }),
    "too-few-values",
  ],
  ["a risk of one half", () => conformanceVerdict(0.5, 0.5), "bad-parameter"],
  ["no risk at all", () => conformanceVerdict(0.5, 0), "bad-parameter"],
  ["a probability above 1", () => conformanceVerdict(1.01, 0.1), "bad-parameter"],
])("%s decides nothing", (_why, ask, code) => {
  expect(ask).toThrow(StatisticsError);
  expect(ask).toThrow(expect.objectContaining({ code }));
});
