import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type CoarseMean,
  coarseDifference,
  coarseInterval,
  coarseMean,
  probabilityCoarseMeanConforms,
} from "../../src/statistics/resolution";
import { sampleSummary } from "../../src/statistics/sample";

const width = (known: CoarseMean) => coarseInterval(known).high - coarseInterval(known).low;
const doubt = (known: CoarseMean) => {
  const probability = probabilityCoarseMeanConforms(known, { low: -0.5, high: 0.5 });
  return Math.min(probability, 1 - probability);
};

const sample = fc
  .array(fc.integer({ min: -90, max: 90 }), { minLength: 2, maxLength: 8 })
  .map((hundredths) => sampleSummary(hundredths.map((one) => one / 100)));
const steps = fc.tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 100 }));

describe("readings in coarser steps never tell more", () => {
  test("three readings: a resolution makes the interval no narrower than the readings' own scatter does", () => {
    // -0.30, -0.20, -0.35 by hand: s / sqrt(3) = 0.0441, t(0.975; 2) = 4.303, so 0.190 to each side.
    const readings = sampleSummary([-0.3, -0.2, -0.35]);
    expect(width(coarseMean(readings, 0)) / 2).toBeCloseTo(0.1897, 3);
    expect(width(coarseMean(readings, 0.05)) / 2).toBeGreaterThanOrEqual(0.1897);
  });

  test("of any sample, and of the difference of two: interval, and doubt about the limits", () => {
    fc.assert(
      fc.property(sample, sample, steps, (one, other, [a, b]) => {
        const [fine, coarse] = [Math.min(a, b) / 100, Math.max(a, b) / 100];
        expect(width(coarseMean(one, coarse))).toBeGreaterThanOrEqual(width(coarseMean(one, 0)) - 1e-9);
        expect(doubt(coarseMean(one, coarse))).toBeGreaterThanOrEqual(doubt(coarseMean(one, 0)) - 1e-9);
        const difference = (step: number) => coarseDifference(coarseMean(one, step), coarseMean(other, step));
        expect(width(difference(fine))).toBeGreaterThanOrEqual(width(difference(0)) - 1e-9);
      }),
    );
  });
});
