import fc from "fast-check";
import judge from "jstat";
import { describe, expect, test } from "vitest";
import { compensatedSum } from "../../src/statistics/compensatedSum";
import { mean, sampleSummary, spread, standardDeviation } from "../../src/statistics/sample";

// Multiples of 1/64, so that sums are exact and equality means equality.
const reading = fc.integer({ min: -6400, max: 6400 }).map((n) => n / 64);
const sample = fc.array(reading, { minLength: 2, maxLength: 60 });
const offset = fc.integer({ min: -1e6, max: 1e6 });

describe("a sample of readings", () => {
  test("has a mean between its smallest and largest value", () => {
    fc.assert(
      fc.property(sample, (values) => {
        expect(mean(values)).toBeGreaterThanOrEqual(Math.min(...values));
        expect(mean(values)).toBeLessThanOrEqual(Math.max(...values));
      }),
    );
  });

  test("moves its mean and keeps its spread when every value is moved", () => {
    fc.assert(
      fc.property(sample, offset, (values, by) => {
        const moved = values.map((value) => value + by);
        expect(mean(moved)).toBeCloseTo(mean(values) + by, 8);
        expect(standardDeviation(moved)).toBeCloseTo(standardDeviation(values), 8);
        expect(spread(moved)).toBe(spread(values));
      }),
    );
  });

  test("mirrors: the same deviation, the opposite mean", () => {
    fc.assert(
      fc.property(sample, (values) => {
        const mirrored = values.map((value) => -value);
        expect(mean(mirrored)).toBe(0 - mean(values));
        expect(standardDeviation(mirrored)).toBe(standardDeviation(values));
      }),
    );
  });

  test("spreads at least as far as its standard deviation lets two values lie apart", () => {
    fc.assert(
      fc.property(sample, (values) => {
        const { count, standardDeviation: s } = sampleSummary(values);
        expect(s).toBeLessThanOrEqual((spread(values) / 2) * Math.sqrt(count / (count - 1)) * (1 + 1e-12));
      }),
    );
  });

  test("agrees with another library", () => {
    fc.assert(
      fc.property(sample, (values) => {
        expect(mean(values)).toBeCloseTo(judge.mean(values), 9);
        expect(standardDeviation(values)).toBeCloseTo(judge.stdev(values, true), 9);
      }),
    );
  });
});

test("a compensated sum gives back what a large pair hides", () => {
  fc.assert(
    fc.property(sample, (values) => {
      expect(compensatedSum([1e17, ...values, -1e17])).toBeCloseTo(compensatedSum(values), 9);
    }),
  );
});
