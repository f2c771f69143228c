import { describe, expect, test } from "vitest";
import published from "../../shared/published/fitts-throughput.json" with { type: "json" };
import { normalProbability } from "../../src/statistics/normalDistribution";
import { mean, standardDeviation } from "../../src/statistics/sample";
import { STANDARD_WIDTH_FACTOR, throughput } from "../../src/statistics/throughput";
import { asPrinted } from "../support/asPrinted";

/** The factor before rounding: the square root of 2 pi e, from the entropy of a normal distribution. */
const ENTROPY_WIDTH_FACTOR = Math.sqrt(2 * Math.PI * Math.E);

const { deviations, times_ms, centerDistance, entropyFactor, standardFactor } = published;
const stops = deviations.map((deviation, i) => ({
  amplitude: centerDistance + deviation + (deviations[i - 1] ?? 0),
  deviation,
  time_ms: times_ms[i] ?? Number.NaN,
}));

describe(`${published.source} (${published.status})`, () => {
  const result = throughput(stops, ENTROPY_WIDTH_FACTOR);

  test("what goes in", () => {
    expect(asPrinted(mean(deviations), published.meanDeviation)).toBe(published.meanDeviation);
    expect(asPrinted(standardDeviation(deviations), published.standardDeviation)).toBe(published.standardDeviation);
    expect(asPrinted(ENTROPY_WIDTH_FACTOR, entropyFactor.factor)).toBe(entropyFactor.factor);
  });

  test("what comes out", () => {
    expect(asPrinted(result.effectiveAmplitude, published.effectiveAmplitude)).toBe(published.effectiveAmplitude);
    expect(asPrinted(result.meanTime_ms, published.meanTime_ms)).toBe(published.meanTime_ms);
    const names = ["effectiveWidth", "effectiveDifficulty_bits", "throughput_bitsPerSecond"] as const;
    for (const name of names) expect(asPrinted(result[name], entropyFactor[name])).toBe(entropyFactor[name]);
  });

  test(`with the factor the standard prints (${standardFactor.status})`, () => {
    const found = throughput(stops);
    expect(asPrinted(found.effectiveWidth, standardFactor.effectiveWidth)).toBe(standardFactor.effectiveWidth);
    expect(asPrinted(found.throughput_bitsPerSecond, standardFactor.throughput_bitsPerSecond)).toBe(
      standardFactor.throughput_bitsPerSecond,
    );
  });

  test(`the standard factor leaves 3.88 % of normal stops outside (${standardFactor.status})`, () => {
    // Worked with the factor before rounding: half of it is 2.0664 standard deviations.
    const outside = 2 * normalProbability(-ENTROPY_WIDTH_FACTOR / 2);
    expect(asPrinted(outside, standardFactor.misses)).toBe(standardFactor.misses);
    expect(STANDARD_WIDTH_FACTOR).toBeCloseTo(ENTROPY_WIDTH_FACTOR, 3);
  });
});
