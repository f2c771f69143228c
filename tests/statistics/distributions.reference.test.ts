import judge from "jstat";
import { describe, expect, test } from "vitest";
import { fisherUpperTail } from "../../src/statistics/fisherDistribution";
import { normalProbability, normalQuantile } from "../../src/statistics/normalDistribution";
import { StatisticsError } from "../../src/statistics/statisticsError";
import { studentProbability, studentQuantile } from "../../src/statistics/studentDistribution";

// The judge itself is no better for Student's t: it makes the probability below 0 with 1 degree of freedom 0.500000018.
const JUDGE = 2e-8;
const levels = [0.001, 0.025, 0.2, 0.5, 0.9, 0.975, 0.9999];
const degrees = [1, 2, 2.5, 7, 30, 136.875];

describe("against another library", () => {
  test.each([-6, -2, -0.3, 0, 1, 3.5])("normal probability at %d", (z) => {
    expect(normalProbability(z)).toBeCloseTo(judge.normal.cdf(z, 0, 1), 10);
  });

  test.each(levels)("normal quantile at %d", (p) => {
    expect(normalQuantile(p)).toBeCloseTo(judge.normal.inv(p, 0, 1), 7);
  });

  test.each(degrees)("Student's t with %d degrees of freedom", (dof) => {
    for (const p of levels) {
      const t = studentQuantile(p, dof);
      expect(Math.abs(judge.studentt.cdf(t, dof) - p)).toBeLessThan(JUDGE);
      expect(studentProbability(t, dof)).toBeCloseTo(p, 10);
    }
  });

  test.each([
    [0.44, 18, 60],
    [1.18, 4, 20],
    [3.2, 2, 7],
    [79.4, 2, 18],
  ])("upper tail of F %d with %d and %d degrees of freedom", (f, above, below) => {
    expect(fisherUpperTail(f, above, below)).toBeCloseTo(1 - judge.centralF.cdf(f, above, below), 8);
  });
});

test("the ends of the line", () => {
  expect(normalProbability(-Infinity)).toBe(0);
  expect(normalProbability(Infinity)).toBe(1);
  expect(studentProbability(-Infinity, 3)).toBe(0);
  expect(studentProbability(Infinity, 3)).toBe(1);
  expect(fisherUpperTail(0, 2, 3)).toBe(1);
  expect(fisherUpperTail(Infinity, 2, 3)).toBe(0);
});

test("a far tail keeps its digits: Phi(-10) is 7.62e-24", () => {
  expect(normalProbability(-10).toExponential(2)).toBe("7.62e-24");
});

test.each([
  ["quantile at 0", () => normalQuantile(0)],
  ["quantile at 1", () => studentQuantile(1, 3)],
  ["no degrees of freedom", () => studentProbability(1, 0)],
  ["negative F", () => fisherUpperTail(-1, 2, 3)],
])("%s does not exist", (_why, ask) => {
  expect(ask).toThrow(StatisticsError);
  expect(ask).toThrow(expect.objectContaining({ code: "bad-parameter" }));
});
