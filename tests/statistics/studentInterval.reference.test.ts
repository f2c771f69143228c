import judge from "jstat";
import { expect, test } from "vitest";
import gum from "../../shared/published/gum-temperatures.json" with { type: "json" };
import welch from "../../shared/published/welch-nist-auto83b.json" with { type: "json" };
import { sampleSummary } from "../../src/statistics/sample";
import { studentInterval } from "../../src/statistics/studentInterval";
import { welchInterval } from "../../src/statistics/welchInterval";
import { asPrinted } from "../support/asPrinted";

test(`interval of the mean of ${gum.source}, quantile by another library`, () => {
  const { low, high } = studentInterval(sampleSummary(gum.values), 0.95);
  const t = judge.studentt.inv(0.975, gum.values.length - 1);
  const reach = t * Number(gum.standardErrorOfMean);
  // The published standard error is rounded to 0.0005, and t is 2.093.
  expect(Math.abs(high - (Number(gum.mean) + reach))).toBeLessThanOrEqual(0.0005 * t);
  expect(Math.abs(low - (Number(gum.mean) - reach))).toBeLessThanOrEqual(0.0005 * t);
});

test(`${welch.source} (${welch.status})`, () => {
  const { difference, standardError, degreesOfFreedom } = welchInterval(welch.first, welch.second);
  expect(asPrinted(difference / standardError, welch.t)).toBe(welch.t);
  expect(asPrinted(degreesOfFreedom, welch.degreesOfFreedom)).toBe(welch.degreesOfFreedom);
});

test("interval of the same difference, quantile by another library", () => {
  const { difference, standardError, degreesOfFreedom, low, high } = welchInterval(welch.first, welch.second, 0.99);
  const reach = judge.studentt.inv(0.995, degreesOfFreedom) * standardError;
  expect(high - difference).toBeCloseTo(reach, 6);
  expect(difference - low).toBeCloseTo(reach, 6);
});
