import fc from "fast-check";
import { expect, test } from "vitest";
import { circularMean, circularStandardDeviation, rayleighZ, resultantLength } from "../../src/statistics/circular";
import { mean, standardDeviation } from "../../src/statistics/sample";
import { StatisticsError } from "../../src/statistics/statisticsError";

const N = 100;
const grid = (min: number, max: number) => fc.integer({ min: min * 64, max: max * 64 }).map((n) => n / 64);
const readings = fc.array(grid(0, N), { minLength: 1, maxLength: 30 });
const agreeing = fc.array(grid(-3, 3), { minLength: 2, maxLength: 30 });

/** Shortest distance of two readings around the dial. */
const apart = (a: number, b: number) => Math.abs(((((a - b) % N) + N * 1.5) % N) - N / 2);

test("99 and 1 average 0, not 50", () => {
  expect(apart(circularMean([99, 1], N), 0)).toBeLessThan(1e-12);
});

test("a mean is a reading, even of the smallest angle below zero", () => {
  expect(circularMean([-1e-300], N)).toBe(0);
  fc.assert(
    fc.property(readings, (values) => {
      fc.pre(resultantLength(values, N) > 1e-9);
      const found = circularMean(values, N);
      expect(found).toBeGreaterThanOrEqual(0);
      expect(found).toBeLessThan(N);
    }),
  );
});

test("turning the dial turns the mean and nothing else; whole turns change nothing", () => {
  fc.assert(
    fc.property(readings, grid(-200, 200), fc.integer({ min: -5, max: 5 }), (values, by, turns) => {
      fc.pre(resultantLength(values, N) > 1e-3);
      const turned = values.map((value) => value + by + turns * N);
      expect(apart(circularMean(turned, N), circularMean(values, N) + by)).toBeLessThan(1e-7);
      expect(resultantLength(turned, N)).toBeCloseTo(resultantLength(values, N), 9);
    }),
  );
});

test("lengths stay in [0, 1] and z in [0, n]", () => {
  fc.assert(
    fc.property(readings, (values) => {
      expect(resultantLength(values, N)).toBeLessThanOrEqual(1);
      expect(rayleighZ(values, N)).toBeLessThanOrEqual(values.length);
      expect(circularStandardDeviation(values, N)).toBeGreaterThanOrEqual(0);
    }),
  );
});

test("readings close together are averaged as on a straight line", () => {
  fc.assert(
    fc.property(agreeing, grid(0, N), (deviations, center) => {
      const values = deviations.map((deviation) => center + deviation);
      expect(apart(circularMean(values, N), center + mean(deviations))).toBeLessThan(0.02);
      const straight = standardDeviation(deviations) * Math.sqrt((values.length - 1) / values.length);
      expect(Math.abs(circularStandardDeviation(values, N) - straight)).toBeLessThan(0.05);
    }),
  );
});

test.each([
  ["opposite readings", () => circularMean([0, 50], N), "no-direction"],
  ["three even ones", () => circularMean([10, 10 + N / 3, 10 + (2 * N) / 3], N), "no-direction"],
  ["no reading", () => circularMean([], N), "empty-sample"],
  ["what is no number", () => resultantLength([Number.NaN], N), "not-finite"],
  ["no turn", () => resultantLength([1], 0), "bad-parameter"],
])("%s point nowhere", (_why, ask, code) => {
  expect(ask).toThrow(StatisticsError);
  expect(ask).toThrow(expect.objectContaining({ code }));
});
