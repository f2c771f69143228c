import fc from "fast-check";
import { expect, test } from "vitest";
import { StatisticsError } from "../../src/statistics/statisticsError";
import { studentInterval } from "../../src/statistics/studentInterval";
import { welchInterval } from "../../src/statistics/welchInterval";

const summary = fc.record({
  count: fc.integer({ min: 2, max: 200 }),
  mean: fc.integer({ min: -640, max: 640 }).map((n) => n / 64),
  standardDeviation: fc.integer({ min: 0, max: 640 }).map((n) => n / 64),
});
const level = fc.double({ min: 0.5, max: 0.999, noNaN: true });

test("an interval of the mean holds the mean and widens with the level", () => {
  fc.assert(
    fc.property(summary, level, level, (sample, a, b) => {
      const narrow = studentInterval(sample, Math.min(a, b));
      const wide = studentInterval(sample, Math.max(a, b));
      expect(narrow.low).toBeLessThanOrEqual(sample.mean);
      expect(narrow.high).toBeGreaterThanOrEqual(sample.mean);
      expect(wide.low).toBeLessThanOrEqual(narrow.low);
      expect(wide.high).toBeGreaterThanOrEqual(narrow.high);
    }),
  );
});

test("degrees of freedom lie between those of the smaller sample and those of both", () => {
  fc.assert(
    fc.property(summary, summary, (first, second) => {
      const { degreesOfFreedom } = welchInterval(first, second);
      expect(degreesOfFreedom).toBeGreaterThanOrEqual(Math.min(first.count, second.count) - 1 - 1e-9);
      expect(degreesOfFreedom).toBeLessThanOrEqual(first.count + second.count - 2 + 1e-9);
    }),
  );
});

test("exchanged samples give the opposite difference", () => {
  fc.assert(
    fc.property(summary, summary, (first, second) => {
      const one = welchInterval(first, second);
      const other = welchInterval(second, first);
      expect(other.difference).toBe(0 - one.difference);
      expect(other.low).toBeCloseTo(-one.high, 9);
      expect(other.high).toBeCloseTo(-one.low, 9);
    }),
  );
});

test("samples alike in size and spread have the degrees of freedom of both", () => {
  fc.assert(
    fc.property(summary, (sample) => {
      expect(welchInterval(sample, sample).degreesOfFreedom).toBeCloseTo(2 * sample.count - 2, 9);
    }),
  );
});

const one = { count: 1, mean: 0, standardDeviation: 0 };
const two = { count: 2, mean: 0, standardDeviation: 1 };
test.each([
  ["one value", () => studentInterval(one), "too-few-values"],
  ["one value on one side", () => welchInterval(two, one), "too-few-values"],
  ["a level of 1", () => studentInterval(two, 1), "bad-level"],
  ["a level of 0", () => welchInterval(two, two, 0), "bad-level"],
])("%s has no interval", (_why, ask, code) => {
  expect(ask).toThrow(StatisticsError);
  expect(ask).toThrow(expect.objectContaining({ code }));
});
