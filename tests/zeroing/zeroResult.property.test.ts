import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Interval } from "../../src/statistics/interval";
import { moreReadings } from "../../src/zeroing/moreReadings";
import { exerciseResult, lostMotionEstimate, sideResult, zeroResult } from "../../src/zeroing/zeroResult";

const LIMITS = { tolerance: 0.5, risk: 0.05 };
const deviation = fc.integer({ min: -192, max: 192 }).map((n) => n / 64);
const side = fc.array(deviation, { minLength: 2, maxLength: 12 });
const sides = fc.record({ right: side, left: side });

const close = (actual: number, wanted: number) =>
  expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(wanted)));
const closeIntervals = (actual: Interval, low: number, high: number) => {
  close(actual.low, low);
  close(actual.high, high);
};

describe("readings of one side", () => {
  test("all shifted: the mean and its interval go along, sd and spread stay", () => {
    fc.assert(
      fc.property(side, deviation, (values, by) => {
        const was = sideResult(values, LIMITS);
        const is = sideResult(
          values.map((value) => value + by),
          LIMITS,
        );
        close(is.mean, was.mean + by);
        closeIntervals(is.ci95, was.ci95.low + by, was.ci95.high + by);
        close(is.sd, was.sd);
        expect([is.n, is.spread]).toEqual([was.n, was.spread]);
      }),
    );
  });

  test("scaled together with the tolerance: all lengths scale, probability and verdict stay", () => {
    fc.assert(
      fc.property(side, fc.constantFrom(0.25, 2, 8), (values, by) => {
        const was = sideResult(values, LIMITS);
        const is = sideResult(
          values.map((value) => value * by),
          { ...LIMITS, tolerance: LIMITS.tolerance * by },
        );
        for (const key of ["mean", "sd", "spread"] as const) close(is[key], was[key] * by);
        closeIntervals(is.ci95, was.ci95.low * by, was.ci95.high * by);
        close(is.conformance, was.conformance);
        expect(is.verdict).toBe(was.verdict);
      }),
    );
  });

  test("mirrored: only the signs of mean and interval change", () => {
    fc.assert(
      fc.property(side, (values) => {
        const was = sideResult(values, LIMITS);
        const is = sideResult(
          values.map((value) => -value),
          LIMITS,
        );
        close(is.mean, -was.mean);
        closeIntervals(is.ci95, -was.ci95.high, -was.ci95.low);
        close(is.conformance, was.conformance);
        expect([is.sd, is.spread, is.verdict]).toEqual([was.sd, was.spread, was.verdict]);
      }),
    );
  });

  test("in any order come to the same", () => {
    fc.assert(
      fc.property(side, (values) => {
        const was = sideResult(values, LIMITS);
        const is = sideResult([...values].reverse(), LIMITS);
        close(is.mean, was.mean);
        close(is.sd, was.sd);
      }),
    );
  });

  test("a wider tolerance conforms no less; a smaller risk turns no doubt into a verdict", () => {
    fc.assert(
      fc.property(side, (values) => {
        const narrow = sideResult(values, LIMITS);
        expect(sideResult(values, { ...LIMITS, tolerance: 1 }).conformance).toBeGreaterThanOrEqual(narrow.conformance);
        const strict = sideResult(values, { ...LIMITS, risk: 0.01 }).verdict;
        expect([narrow.verdict, "not shown yet"]).toContain(strict);
      }),
    );
  });

  test("more readings are asked for exactly where nothing is shown yet", () => {
    fc.assert(
      fc.property(side, (values) => {
        const result = sideResult(values, LIMITS);
        expect(moreReadings(result, LIMITS) === 0).toBe(result.verdict !== "not shown yet");
      }),
    );
  });
});

describe("lost motion", () => {
  test("turns its sign with the sides", () => {
    fc.assert(
      fc.property(sides, ({ right, left }) => {
        const was = lostMotionEstimate({ right, left });
        const is = lostMotionEstimate({ right: left, left: right });
        close(is.estimate, -was.estimate);
        closeIntervals(is.ci95, -was.ci95.high, -was.ci95.low);
      }),
    );
  });

  test("does not move when both sides are shifted; grows as the right one is", () => {
    fc.assert(
      fc.property(sides, deviation, ({ right, left }, by) => {
        const shifted = (values: readonly number[]) => values.map((value) => value + by);
        const was = lostMotionEstimate({ right, left });
        const both = lostMotionEstimate({ right: shifted(right), left: shifted(left) });
        close(both.estimate, was.estimate);
        closeIntervals(both.ci95, was.ci95.low, was.ci95.high);
        close(lostMotionEstimate({ right: shifted(right), left }).estimate, was.estimate + by);
      }),
    );
  });

  test("scales", () => {
    fc.assert(
      fc.property(sides, fc.constantFrom(0.25, 2, 8), ({ right, left }, by) => {
        const scaled = (values: readonly number[]) => values.map((value) => value * by);
        const was = lostMotionEstimate({ right, left });
        const is = lostMotionEstimate({ right: scaled(right), left: scaled(left) });
        close(is.estimate, was.estimate * by);
        closeIntervals(is.ci95, was.ci95.low * by, was.ci95.high * by);
      }),
    );
  });
});

test("an exercise is judged at the index, and its lost motion seen at the cam once the hand is taken off", () => {
  fc.assert(
    fc.property(sides, fc.integer({ min: 0, max: 128 }), (seen, play) => {
      const read = (values: readonly number[], by: number) =>
        values.map((value) => ({ deviation: value, cam: value + by }));
      const result = exerciseResult({ right: read(seen.right, 0.5 + play / 64), left: read(seen.left, 0.5) }, LIMITS);
      const plain = zeroResult(seen, LIMITS);
      expect([result.right, result.left]).toEqual([plain.right, plain.left]);
      close(result.lostMotion.estimate, play / 64);
    }),
  );
});

test.each([
  { why: "no reading", values: [], code: "empty-sample" },
  { why: "one reading", values: [0.5], code: "too-few-values" },
  { why: "a reading that is no number", values: [0.5, Number.NaN], code: "not-finite" },
])("$why comes to nothing", ({ values, code }) => {
  expect(() => sideResult(values, LIMITS)).toThrow(expect.objectContaining({ code }));
  expect(() => lostMotionEstimate({ right: [0, 1], left: values })).toThrow(expect.objectContaining({ code }));
});
