import { describe, expect, test } from "vitest";
import gum from "../../shared/published/gum-temperatures.json" with { type: "json" };
import nist from "../../shared/published/nist-strd-univariate.json" with { type: "json" };
import { mean, sampleSummary, standardDeviation } from "../../src/statistics/sample";
import { asPrinted } from "../support/asPrinted";

const { michelso, numAcc1, numAcc2 } = nist;
const alternating = [numAcc2.first, ...Array.from({ length: numAcc2.pairs }, () => numAcc2.pair).flat()];

// NIST certifies 15 figures of decimal data. A binary copy of 299.85 is already off by up to half of 2^-44, and that
// alone may move the standard deviation by sqrt(n / (n - 1)) as much.
const MICHELSO_COPY = 2 ** -45 * Math.sqrt(100 / 99);

describe(`${nist.source} (${nist.status})`, () => {
  test("Michelso: mean", () => {
    expect(Math.abs(mean(michelso.values) - Number(michelso.mean))).toBeLessThanOrEqual(2 ** -45);
  });

  test("Michelso: standard deviation, as far as a binary copy of the data carries it", () => {
    const error = Math.abs(standardDeviation(michelso.values) - Number(michelso.standardDeviation));
    expect(error).toBeLessThanOrEqual(MICHELSO_COPY);
  });

  test("NumAcc1: three neighboring whole numbers above ten million, exactly", () => {
    expect(mean(numAcc1.values)).toBe(Number(numAcc1.mean));
    expect(standardDeviation(numAcc1.values)).toBe(Number(numAcc1.standardDeviation));
  });

  test("NumAcc2: 1001 alternating values", () => {
    expect(mean(alternating)).toBe(Number(numAcc2.mean));
    expect(standardDeviation(alternating).toFixed(15)).toBe(Number(numAcc2.standardDeviation).toFixed(15));
  });
});

test(`${gum.source} (results ${gum.status}, readings ${gum.dataStatus})`, () => {
  const sample = sampleSummary(gum.values);
  expect(asPrinted(sample.mean, gum.mean)).toBe(gum.mean);
  expect(asPrinted(sample.standardDeviation, gum.standardDeviation)).toBe(gum.standardDeviation);
  const standardError = sample.standardDeviation / Math.sqrt(sample.count);
  expect(asPrinted(standardError, gum.standardErrorOfMean)).toBe(gum.standardErrorOfMean);
});
