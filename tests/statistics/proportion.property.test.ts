import fc from "fast-check";
import judge from "jstat";
import { describe, expect, test } from "vitest";
import { clopperPearsonInterval, wilsonInterval, zeroFailureSampleSize } from "../../src/statistics/proportion";
import { StatisticsError } from "../../src/statistics/statisticsError";

const experiment = fc
  .integer({ min: 1, max: 200 })
  .chain((trials) => fc.record({ successes: fc.integer({ min: 0, max: trials }), trials: fc.constant(trials) }));

describe.each([
  ["Wilson", wilsonInterval],
  ["Clopper-Pearson", clopperPearsonInterval],
])("%s interval", (_name, interval) => {
  test("lies in [0, 1] and holds the share observed", () => {
    fc.assert(
      fc.property(experiment, ({ successes, trials }) => {
        const { low, high } = interval(successes, trials);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(successes / trials);
        expect(high).toBeGreaterThanOrEqual(successes / trials);
        expect(high).toBeLessThanOrEqual(1);
      }),
    );
  });

  test("mirrors: failures are what successes are not", () => {
    fc.assert(
      fc.property(experiment, ({ successes, trials }) => {
        const { low, high } = interval(successes, trials);
        const failures = interval(trials - successes, trials);
        expect(failures.low).toBeCloseTo(1 - high, 9);
        expect(failures.high).toBeCloseTo(1 - low, 9);
      }),
    );
  });

  test.each([
    [-1, 10],
    [11, 10],
    [0, 0],
    [0.5, 10],
  ])("%d successes in %d trials is no experiment", (successes, trials) => {
    expect(() => interval(successes, trials)).toThrow(StatisticsError);
    expect(() => interval(successes, trials)).toThrow(expect.objectContaining({ code: "bad-count" }));
  });
});

test("the ends of a Clopper-Pearson interval leave exactly half the risk outside", () => {
  fc.assert(
    fc.property(experiment, ({ successes, trials }) => {
      const { low, high } = clopperPearsonInterval(successes, trials, 0.9);
      if (successes < trials) expect(judge.binomial.cdf(successes, trials, high)).toBeCloseTo(0.05, 6);
      if (successes > 0) expect(1 - judge.binomial.cdf(successes - 1, trials, low)).toBeCloseTo(0.05, 6);
    }),
  );
});

test("a zero-failure sample is large enough, and one fewer would not be", () => {
  const share = fc.double({ min: 0.01, max: 0.999, noNaN: true });
  fc.assert(
    fc.property(share, share, (confidence, reliability) => {
      const trials = zeroFailureSampleSize(confidence, reliability);
      const slack = 1 + 1e-9;
      expect(reliability ** trials).toBeLessThanOrEqual((1 - confidence) * slack);
      if (trials > 1) expect(reliability ** (trials - 1) * slack).toBeGreaterThan(1 - confidence);
    }),
  );
});

test("a whole number of trials is not rounded up once more", () => {
  expect(zeroFailureSampleSize(0.9, 0.1)).toBe(1);
  expect(zeroFailureSampleSize(0.99, 0.1)).toBe(2);
  expect(zeroFailureSampleSize(0.75, 0.5)).toBe(2);
});

test.each([
  [0, 0.9],
  [1, 0.9],
  [0.9, 0],
  [0.9, 1],
])("confidence %d and reliability %d ask for no sample", (confidence, reliability) => {
  expect(() => zeroFailureSampleSize(confidence, reliability)).toThrow(
    expect.objectContaining({ code: "bad-parameter" }),
  );
});
