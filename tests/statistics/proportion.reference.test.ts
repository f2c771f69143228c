import judge from "jstat";
import { describe, expect, test } from "vitest";
import newcombe from "../../shared/published/newcombe-1998.json" with { type: "json" };
import successRun from "../../shared/published/zero-failure-sample-size.json" with { type: "json" };
import { clopperPearsonInterval, wilsonInterval, zeroFailureSampleSize } from "../../src/statistics/proportion";
import { asPrinted } from "../support/asPrinted";

const printedAs = ({ low, high }: { low: number; high: number }, [a = "", b = ""]: readonly string[]) => [
  asPrinted(low, a),
  asPrinted(high, b),
];

describe(`${newcombe.source} (${newcombe.status})`, () => {
  test.each(newcombe.rows)("$successes of $trials", ({ successes, trials, wilson, clopperPearson }) => {
    expect(printedAs(wilsonInterval(successes, trials, newcombe.level), wilson)).toEqual(wilson);
    expect(printedAs(clopperPearsonInterval(successes, trials, newcombe.level), clopperPearson)).toEqual(
      clopperPearson,
    );
  });
});

test.each([
  [1, 29, 0.95],
  [14, 20, 0.9],
  [57, 60, 0.99],
])("Clopper-Pearson for %d of %d at %d, by the beta quantile of another library", (k, n, level) => {
  const { low, high } = clopperPearsonInterval(k, n, level);
  expect(low).toBeCloseTo(judge.beta.inv((1 - level) / 2, k, n - k + 1), 7);
  expect(high).toBeCloseTo(judge.beta.inv((1 + level) / 2, k + 1, n - k), 7);
});

test.each(successRun.rows)(
  `${successRun.source} ($status): confidence $confidence, reliability $reliability`,
  ({ confidence, reliability, trials }) => {
    expect(zeroFailureSampleSize(confidence, reliability)).toBe(trials);
  },
);
