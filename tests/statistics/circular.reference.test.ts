import { describe, expect, test } from "vitest";
import published from "../../shared/published/circular.json" with { type: "json" };
import { circularMean, circularStandardDeviation, rayleighZ, resultantLength } from "../../src/statistics/circular";
import { asPrinted } from "../support/asPrinted";

const { perTurn, zar, jammalamadaka } = published;

describe(`${published.source} (${published.status})`, () => {
  test(zar.place, () => {
    expect(asPrinted(circularMean(zar.readings, perTurn), zar.mean)).toBe(zar.mean);
    expect(asPrinted(resultantLength(zar.readings, perTurn), zar.resultantLength)).toBe(zar.resultantLength);
    expect(asPrinted(circularStandardDeviation(zar.readings, perTurn), zar.standardDeviation)).toBe(
      zar.standardDeviation,
    );
    expect(asPrinted(rayleighZ(zar.readings, perTurn), zar.rayleighZ)).toBe(zar.rayleighZ);
  });

  test(jammalamadaka.place, () => {
    expect(asPrinted(circularMean(jammalamadaka.readings, perTurn), jammalamadaka.mean)).toBe(jammalamadaka.mean);
  });
});
