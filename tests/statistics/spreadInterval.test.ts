import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { sampleSummary } from "../../src/statistics/sample";
import { spreadInterval } from "../../src/statistics/spreadInterval";
import { StatisticsError } from "../../src/statistics/statisticsError";

const summary = (count: number, standardDeviation: number) => ({ count, standardDeviation, mean: 0 });

describe("the ends cut off the same share of the chi-squared distribution (jstat as the judge)", () => {
  test.each([
    { count: 2, level: 0.95 },
    { count: 10, level: 0.9 },
    { count: 66, level: 0.95 },
    { count: 300, level: 0.99 },
  ])("$count values at $level", ({ count, level }) => {
    const { low, high } = spreadInterval(summary(count, 0.7), level);
    const below = (sigma: number) => jstat.chisquare.cdf(((count - 1) * 0.49) / sigma ** 2, count - 1);
    expect(below(low)).toBeCloseTo((1 + level) / 2, 9);
    expect(below(high)).toBeCloseTo((1 - level) / 2, 9);
  });
});

// From memory: the tabled chi-squared quantiles of 9 degrees of freedom, 2.700 and 19.023.
test("ten values with a spread of 1: 0.688 to 1.826 (quantiles from memory)", () => {
  const { low, high } = spreadInterval(summary(10, 1));
  expect(low).toBeCloseTo(Math.sqrt(9 / 19.023), 4);
  expect(high).toBeCloseTo(Math.sqrt(9 / 2.7), 3);
});

test("no spread is a single point, one value none at all", () => {
  expect(spreadInterval(sampleSummary([2, 2, 2]))).toEqual({ low: 0, high: 0 });
  expect(() => spreadInterval(summary(1, 0))).toThrow(StatisticsError);
  expect(() => spreadInterval(summary(5, 1), 1)).toThrow(StatisticsError);
});
