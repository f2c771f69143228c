import fc from "fast-check";
import judge from "jstat";
import { expect, test } from "vitest";
import published from "../../../shared/published/nist-strd-sirstv.json" with { type: "json" };
import { oneWayAnalysis } from "../../../src/statistics/gauge/analysisOfVariance";
import { StatisticsError } from "../../../src/statistics/statisticsError";

// NIST certifies 15 figures of decimal data. A binary copy of 196.2 is already off by up to half of 2^-45. A sum of
// squares is the squared length of a projection of all 25 values, so its root is off by up to 5 such copies.
const COPY = Math.sqrt(25) * 2 ** -46;

test(`${published.source} (${published.status}), as far as a binary copy of the data carries it`, () => {
  const { f, residualStandardDeviation, between, within } = oneWayAnalysis(published.groups);
  const publishedF = Number(published.f);
  const publishedResidual = Number(published.residualStandardDeviation);
  expect(Math.abs(residualStandardDeviation - publishedResidual)).toBeLessThanOrEqual(COPY / Math.sqrt(20));
  const inF = 2 * publishedF * COPY * (between.sumOfSquares ** -0.5 + within.sumOfSquares ** -0.5);
  expect(Math.abs(f - publishedF)).toBeLessThanOrEqual(inF);
  expect(f.toFixed(11)).toBe(publishedF.toFixed(11));
  expect([between.degreesOfFreedom, within.degreesOfFreedom]).toEqual([4, 20]);
});

const reading = fc.integer({ min: -640, max: 640 }).map((n) => n / 64);
const group = fc.array(reading, { minLength: 2, maxLength: 12 });

test("F agrees with another library", () => {
  fc.assert(
    fc.property(fc.array(group, { minLength: 2, maxLength: 5 }), (groups) => {
      fc.pre(groups.some((values) => new Set(values).size > 1));
      const { f } = oneWayAnalysis(groups);
      const judged = judge.anovafscore(...groups);
      expect(Math.abs(f - judged)).toBeLessThanOrEqual(1e-9 * (1 + judged));
    }),
  );
});

test.each([
  ["one group", [[1, 2, 3]], "too-few-values"],
  ["groups of one", [[1], [2]], "too-few-values"],
  ["an empty group", [[1, 2, 3], []], "empty-sample"],
  [
    "equal values",
    [
      [1, 1],
      [1, 1],
    ],
    "no-spread",
  ],
])("%s cannot be compared", (_why, groups, code) => {
  expect(() => oneWayAnalysis(groups)).toThrow(StatisticsError);
  expect(() => oneWayAnalysis(groups)).toThrow(expect.objectContaining({ code }));
});

test("groups that differ without any spread of their own differ beyond chance", () => {
  const { f, p } = oneWayAnalysis([
    [1, 1],
    [2, 2],
  ]);
  expect(f).toBe(Infinity);
  expect(p).toBe(0);
});
