import { expect, test } from "vitest";
import { learningSteps } from "../../src/statistics/learningCusum";
import { StatisticsError } from "../../src/statistics/statisticsError";

const rule = { adequateFailureRate: 0.1, inadequateFailureRate: 0.3, limit: 1.25 };

test("a score rises by ln(9/7) at a success, and falls by ln 3 at a failure", () => {
  const { success, failure } = learningSteps(rule);
  expect(success).toBeCloseTo(Math.log(9 / 7), 12);
  expect(failure).toBeCloseTo(-Math.log(3), 12);
});

test.each([
  ["rates the wrong way round", { ...rule, adequateFailureRate: 0.4 }],
  ["an adequate rate of 0", { ...rule, adequateFailureRate: 0 }],
  ["an inadequate rate of 1", { ...rule, inadequateFailureRate: 1 }],
  ["no limit", { ...rule, limit: 0 }],
])("%s is no rule", (_why, wrong) => {
  expect(() => learningSteps(wrong)).toThrow(StatisticsError);
  expect(() => learningSteps(wrong)).toThrow(expect.objectContaining({ code: "bad-parameter" }));
});
