import { expect, test } from "vitest";
import published from "../../shared/published/pine-growth.json" with { type: "json" };
import { fitLearningCurve, learningCurveValue } from "../../src/statistics/learningCurve";
import { asPrinted } from "../support/asPrinted";

test(`${published.source} (${published.status})`, () => {
  const attempts = published.ages.map((number, i) => ({ number, value: published.heights[i] ?? Number.NaN }));
  const curve = fitLearningCurve(attempts);
  if (curve.kind !== "fitted") throw new Error(`not fitted: ${curve.reason}`);
  expect(asPrinted(curve.asymptote, published.asymptote)).toBe(published.asymptote);
  expect(asPrinted(learningCurveValue(curve, 0), published.atZero)).toBe(published.atZero);
  expect(asPrinted(Math.log(curve.rate), published.logRate)).toBe(published.logRate);
  const { residualStandardDeviation, asymptoteInterval } = curve;
  expect(asPrinted(residualStandardDeviation, published.residualStandardDeviation)).toBe(
    published.residualStandardDeviation,
  );
  expect(asPrinted(asymptoteInterval.low, published.asymptoteLow)).toBe(published.asymptoteLow);
  expect(asPrinted(asymptoteInterval.high, published.asymptoteHigh)).toBe(published.asymptoteHigh);
});
