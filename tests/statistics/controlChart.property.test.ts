import fc from "fast-check";
import { expect, test } from "vitest";
import { ewmaChart, individualsChart } from "../../src/statistics/controlChart";
import { StatisticsError } from "../../src/statistics/statisticsError";

const reading = fc.integer({ min: -640, max: 640 }).map((n) => n / 64);
const values = fc.array(reading, { minLength: 2, maxLength: 40 });
const steady = { lambda: 0.25, start: 0, standardDeviation: 1, width: 3 };

test("an average stays between the start and all values so far", () => {
  fc.assert(
    fc.property(values, fc.constantFrom(1 / 8, 1 / 4, 1 / 2, 1), (series, lambda) => {
      const { points } = ewmaChart(series, { ...steady, lambda });
      points.forEach((point, i) => {
        const soFar = [steady.start, ...series.slice(0, i + 1)];
        expect(point).toBeGreaterThanOrEqual(Math.min(...soFar) - 1e-12);
        expect(point).toBeLessThanOrEqual(Math.max(...soFar) + 1e-12);
      });
    }),
  );
});

test("a full weight leaves the values as they are, with the limits of single values", () => {
  fc.assert(
    fc.property(values, (series) => {
      const { points, limits } = ewmaChart(series, { ...steady, lambda: 1 });
      expect(points).toEqual(series.map((value) => value + 0));
      expect(limits).toEqual({ low: -3, high: 3 });
    }),
  );
});

test("a lasting shift leaves the limits, and the chart says from where", () => {
  // 0.5, 0.875, 1.156, 1.367 against a limit of 3 / sqrt 7, which is 1.134.
  const { beyond } = ewmaChart([0, 0, 2, 2, 2, 2], steady);
  expect(beyond).toEqual([4, 5]);
});

test("the individuals chart marks exactly the values beyond its limits", () => {
  fc.assert(
    fc.property(values, (series) => {
      const { beyond, limits, points } = individualsChart(series, 1);
      const outside = points.map((point) => point < limits.low || point > limits.high);
      expect(beyond).toEqual(outside.flatMap((isOutside, i) => (isOutside ? [i] : [])));
    }),
  );
});

test.each([
  ["nothing", () => ewmaChart([], steady), "empty-sample"],
  ["one value", () => individualsChart([1]), "too-few-values"],
  ["what is no number", () => individualsChart([1, Number.NaN]), "not-finite"],
  ["no weight", () => ewmaChart([1], { ...steady, lambda: 0 }), "bad-parameter"],
  ["too much weight", () => ewmaChart([1], { ...steady, lambda: 1.1 }), "bad-parameter"],
  ["no deviation", () => ewmaChart([1], { ...steady, standardDeviation: 0 }), "bad-parameter"],
  ["no width", () => individualsChart([1, 2], 0), "bad-parameter"],
])("%s makes no chart", (_why, ask, code) => {
  expect(ask).toThrow(StatisticsError);
  expect(ask).toThrow(expect.objectContaining({ code }));
});
