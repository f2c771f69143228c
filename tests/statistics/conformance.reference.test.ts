import judge from "jstat";
import { describe, expect, test } from "vitest";
import published from "../../shared/published/jcgm-106.json" with { type: "json" };
import { probabilityMeanConforms, probabilityOfConformance } from "../../src/statistics/conformance";
import { asPrinted } from "../support/asPrinted";

test.each(published.conformance)(
  `${published.source} ($status): $mean with $standardUncertainty has probability $probability`,
  ({ mean, standardUncertainty, low, high, probability }) => {
    const found = probabilityOfConformance({ mean, standardUncertainty }, { low: low ?? -Infinity, high });
    expect(asPrinted(found, probability)).toBe(probability);
  },
);

test("a guard of two uncertainties leaves 2.3 % on the wrong side (SEEN)", () => {
  const { nonconforming } = published.guardOfTwoUncertainties;
  const knowledge = { mean: 2 - 2 * 0.1, standardUncertainty: 0.1 };
  const found = 1 - probabilityOfConformance(knowledge, { low: -Infinity, high: 2 });
  expect(asPrinted(found, nonconforming)).toBe(nonconforming);
});

/** Simpson's rule on an even number of pieces. */
function integral(f: (x: number) => number, from: number, to: number, pieces = 2000): number {
  const step = (to - from) / pieces;
  let sum = f(from) + f(to);
  for (let i = 1; i < pieces; i += 1) sum += f(from + i * step) * (i % 2 === 1 ? 4 : 2);
  return (sum * step) / 3;
}

describe(`ball bearings, ${published.source} ${published.ballBearings.clause} (${published.ballBearings.status})`, () => {
  const { prior, upperLimit, standardUncertainty, nonconforming, consumersRisk, guard, guardedRisk } =
    published.ballBearings;
  const density = (value: number) => judge.gamma.pdf(value, prior.shape, prior.scale);

  /** Share of bearings that are beyond the limit and yet measured below the limit less the guard. */
  const risk = (w: number) =>
    integral(
      (mean) =>
        density(mean) *
        probabilityOfConformance({ mean, standardUncertainty }, { low: -Infinity, high: upperLimit - w }),
      upperLimit,
      8,
    );

  test("share beyond the limit", () => {
    const found = integral(density, upperLimit, 16);
    expect(asPrinted(found, nonconforming)).toBe(nonconforming);
  });

  test("consumer's risk without a guard", () => {
    expect(asPrinted(risk(0), consumersRisk)).toBe(consumersRisk);
  });

  test("the guard that leaves a risk of 0.1 %, to its last printed digit", () => {
    const half = 0.5e-7;
    expect(risk(Number(guard) - half)).toBeGreaterThan(guardedRisk);
    expect(risk(Number(guard) + half)).toBeLessThan(guardedRisk);
  });
});

test("conformance of a mean, by the t distribution of another library", () => {
  const sample = { count: 4, mean: 0.3, standardDeviation: 0.8 };
  const below = (x: number) => judge.studentt.cdf((x - 0.3) / 0.4, 3);
  expect(probabilityMeanConforms(sample, { low: -1, high: 1 })).toBeCloseTo(below(1) - below(-1), 9);
});
