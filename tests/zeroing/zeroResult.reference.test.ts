import judge from "jstat";
import { describe, expect, test } from "vitest";
import gum from "../../shared/published/gum-temperatures.json" with { type: "json" };
import nist from "../../shared/published/nist-strd-univariate.json" with { type: "json" };
import { lostMotionEstimate, sideResult } from "../../src/zeroing/zeroResult";
import { asPrinted } from "../support/asPrinted";

const limits = (tolerance: number) => ({ tolerance, risk: 0.05 });

describe(`${gum.source} (results ${gum.status}, readings ${gum.dataStatus})`, () => {
  const result = sideResult(gum.values, limits(200));

  test("number, mean and standard deviation", () => {
    expect(result.n).toBe(20);
    expect(asPrinted(result.mean, gum.mean)).toBe(gum.mean);
    expect(asPrinted(result.sd, gum.standardDeviation)).toBe(gum.standardDeviation);
    expect(result.spread).toBeCloseTo(102.72 - 96.9, 12);
  });

  test("interval, from the published standard error and a quantile of another library", () => {
    const t = judge.studentt.inv(0.975, 19);
    const reach = (result.ci95.high - result.ci95.low) / 2;
    expect(Math.abs(reach / t - Number(gum.standardErrorOfMean))).toBeLessThanOrEqual(0.0005);
  });

  test("half of it lies within a tolerance that ends at the mean", () => {
    expect(sideResult(gum.values, limits(result.mean)).conformance).toBeCloseTo(0.5, 12);
  });
});

test(`Michelso of ${nist.source} (${nist.status}), as deviations from 299.85`, () => {
  const { values, mean, standardDeviation } = nist.michelso;
  const result = sideResult(
    values.map((value) => value - 299.85),
    limits(0.5),
  );
  // Each value is a binary copy of a decimal, off by up to 2^-45, and the shift rounds no more.
  expect(Math.abs(result.mean + 299.85 - Number(mean))).toBeLessThanOrEqual(2 ** -44);
  expect(Math.abs(result.sd - Number(standardDeviation))).toBeLessThanOrEqual(2 ** -45 * Math.sqrt(100 / 99));
});

const READINGS = {
  right: [0.31, 0.12, 0.24, -0.05, 0.4],
  left: [-0.61, -0.22, -0.35],
} as const;

test("Welch's interval, worked out from another library's parts", () => {
  const { estimate, ci95 } = lostMotionEstimate(READINGS);
  const [r, l] = [[...READINGS.right], [...READINGS.left]];
  const a = judge.stdev(r, true) ** 2 / r.length;
  const b = judge.stdev(l, true) ** 2 / l.length;
  const degrees = (a + b) ** 2 / (a ** 2 / (r.length - 1) + b ** 2 / (l.length - 1));
  const reach = judge.studentt.inv(0.975, degrees) * Math.sqrt(a + b);
  expect(estimate).toBeCloseTo(judge.mean(r) - judge.mean(l), 12);
  expect(ci95.low).toBeCloseTo(estimate - reach, 6);
  expect(ci95.high).toBeCloseTo(estimate + reach, 6);
});

/** Simpson's rule over an even number of strips. */
function integral(f: (x: number) => number, low: number, high: number, strips = 2000): number {
  const step = (high - low) / strips;
  const weight = (k: number) => (k === 0 || k === strips ? 1 : k % 2 === 1 ? 4 : 2);
  return (
    (step / 3) * Array.from({ length: strips + 1 }, (_, k) => weight(k) * f(low + k * step)).reduce((x, y) => x + y)
  );
}

test.each([
  { turn: "right", tolerance: 0.5 },
  { turn: "right", tolerance: 0.25 },
  { turn: "left", tolerance: 0.5 },
  { turn: "left", tolerance: 0.1 },
] as const)("conformance of the $turn side to $tolerance is the integral of another library's t density", (row) => {
  const values = [...READINGS[row.turn]];
  const { conformance } = sideResult(values, limits(row.tolerance));
  const mean = judge.mean(values);
  const scale = judge.stdev(values, true) / Math.sqrt(values.length);
  const density = (x: number) => judge.studentt.pdf((x - mean) / scale, values.length - 1) / scale;
  expect(conformance).toBeCloseTo(integral(density, -row.tolerance, row.tolerance), 9);
});
