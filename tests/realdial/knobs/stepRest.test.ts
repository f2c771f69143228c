import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { StepRest } from "../../../src/realdial/knobs/stepRest";

const STEP = 1 / 400;

/** The noise that is told last, of readings 20 ms apart. */
function noiseOf(readings: readonly number[], step = STEP): number | null {
  const rest = new StepRest(step);
  return readings.reduce<number | null>((last, turns, k) => rest.take(turns, 20 * k) ?? last, null);
}

describe("the noise of a device that tells steps", () => {
  test("is that of its step, before it has rested and while nothing flickers", () => {
    expect(new StepRest(STEP).noise).toBeCloseTo(STEP / Math.sqrt(12), 12);
    expect(noiseOf(Array(20).fill(0.3))).toBeNull();
    expect(noiseOf(Array(80).fill(0.3))).toBeCloseTo(STEP / Math.sqrt(12), 12);
  });

  test("grows by what its readings scatter", () => {
    const flickers = Array.from({ length: 101 }, (_, k) => (k % 2) * STEP);
    // Half of them a step on: a standard deviation of half a step, and a step / sqrt(12) besides.
    expect(noiseOf(flickers)).toBeCloseTo(STEP * Math.sqrt(1 / 4 + 1 / 12), 4);
  });

  test("is not measured while it turns", () => {
    expect(noiseOf(Array.from({ length: 200 }, (_, k) => k * STEP))).toBeNull();
  });

  test("is never below that of its step, nor less for a coarser one", () => {
    const readings = fc.array(fc.integer({ min: -1, max: 1 }), { minLength: 60, maxLength: 90 });
    fc.assert(
      fc.property(readings, fc.constantFrom(1 / 2400, 1 / 1000, 1 / 400), (steps, step) => {
        const noise = noiseOf(
          steps.map((one) => one * step),
          step,
        );
        expect(noise ?? 0).toBeGreaterThanOrEqual(step / Math.sqrt(12) - 1e-12);
      }),
    );
  });
});
