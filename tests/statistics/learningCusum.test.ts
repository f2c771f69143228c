import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type LearningCusumRule, learningCusum } from "../../src/statistics/learningCusum";
import { simulateOperatingCharacteristic } from "../../src/statistics/operatingCharacteristic";
import { StatisticsError } from "../../src/statistics/statisticsError";
import { seeded } from "../support/seeded";

const rule = { adequateFailureRate: 0.1, inadequateFailureRate: 0.3, limit: 1.25 };

describe("the running score", () => {
  test("rises by ln(9/7) at a success, falls by ln 3 at a failure, and not below 0", () => {
    const up = Math.log(9 / 7);
    const { scores } = learningCusum([true, false, true, true, true, true, true, false], rule);
    const expected = [up, 0, up, 2 * up, 3 * up, 4 * up, 5 * up, 5 * up - Math.log(3)];
    scores.forEach((score, i) => {
      expect(score).toBeCloseTo(expected[i] ?? Number.NaN, 12);
    });
  });

  test("declares at the fifth success in a row here, and takes nothing back", () => {
    const five = [true, true, true, true, true];
    expect(learningCusum(five.slice(1), rule).declaredAt).toBeUndefined();
    expect(learningCusum(five, rule).declaredAt).toBe(5);
    expect(learningCusum([...five, false, false, false], rule).declaredAt).toBe(5);
  });

  test("has no score before the first attempt", () => {
    expect(learningCusum([], rule)).toEqual({ scores: [], declaredAt: undefined });
  });

  test("is never below 0, and a success in place of a failure never lowers it", () => {
    const outcomes = fc.array(fc.boolean(), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(outcomes, fc.nat(), (successes, place) => {
        const better = successes.with(place % successes.length, true);
        const { scores } = learningCusum(successes, rule);
        learningCusum(better, rule).scores.forEach((score, i) => {
          expect(scores[i]).toBeGreaterThanOrEqual(0);
          expect(score).toBeGreaterThanOrEqual((scores[i] ?? 0) - 1e-12);
        });
      }),
    );
  });
});

/** Probability of every score that can be reached, as far as the limit. */
type Reachable = ReadonlyMap<number, number>;

function afterOneMore(reachable: Reachable, steps: readonly (readonly [step: number, chance: number])[]): Reachable {
  const next = new Map<number, number>();
  for (const [score, chance] of reachable) {
    for (const [step, share] of steps) {
      // Rounded, so that one score reached on two ways is one score.
      const reached = Math.round(Math.max(0, score + step) * 1e9) / 1e9;
      next.set(reached, (next.get(reached) ?? 0) + chance * share);
    }
  }
  return next;
}

/** Exact chance of a declaration, and the mean attempts it takes: every way the attempts can go, weighed. */
function exactlyDeclared(
  { adequateFailureRate: p0, inadequateFailureRate: p1, limit }: LearningCusumRule,
  failureRate: number,
  attempts: number,
) {
  const steps = [
    [Math.log(1 - p0) - Math.log(1 - p1), 1 - failureRate],
    [Math.log(p0) - Math.log(p1), failureRate],
  ] as const;
  let reachable: Reachable = new Map([[0, 1]]);
  let share = 0;
  let weighted = 0;
  for (let attempt = 1; attempt <= attempts; attempt += 1) {
    const all = [...afterOneMore(reachable, steps)];
    const declared = all.filter(([score]) => score >= limit).reduce((sum, [, chance]) => sum + chance, 0);
    share += declared;
    weighted += declared * attempt;
    reachable = new Map(all.filter(([score]) => score < limit));
  }
  return { share, meanAttempts: weighted / share };
}

describe("the operating characteristic", () => {
  const learners = 20000;

  test.each([
    ["adequate", 0.1],
    ["in between", 0.2],
    ["inadequate", 0.3],
    ["hopeless", 0.6],
  ])("of a learner who is %s agrees with the exact chance", (_who, failureRate) => {
    const exact = exactlyDeclared(rule, failureRate, 30);
    const found = simulateOperatingCharacteristic(rule, { failureRate, attempts: 30, learners }, seeded(11));
    const chance = Math.sqrt((exact.share * (1 - exact.share)) / learners);
    expect(Math.abs(found.declaredShare - exact.share)).toBeLessThanOrEqual(4 * chance);
    expect(Math.abs((found.meanAttempts ?? Number.NaN) - exact.meanAttempts)).toBeLessThan(0.3);
  });

  test("more attempts declare more of the inadequate: the limit belongs to a number of attempts", () => {
    const shares = [10, 50, 250].map((attempts) => exactlyDeclared(rule, 0.3, attempts).share);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares[2]).toBeGreaterThan(0.9);
  });

  test("is the same for the same seed", () => {
    const learner = { failureRate: 0.2, attempts: 30, learners: 100 };
    const first = simulateOperatingCharacteristic(rule, learner, seeded(5));
    expect(simulateOperatingCharacteristic(rule, learner, seeded(5))).toEqual(first);
  });

  test("of those who always or never fail is certain", () => {
    const never = simulateOperatingCharacteristic(rule, { failureRate: 0, attempts: 5, learners: 10 }, seeded(1));
    expect([never.declaredShare, never.meanAttempts, never.declaredInterval.high]).toEqual([1, 5, 1]);
    const always = simulateOperatingCharacteristic(rule, { failureRate: 1, attempts: 5, learners: 10 }, seeded(1));
    expect([always.declaredShare, always.meanAttempts, always.declaredInterval.low]).toEqual([0, undefined, 0]);
  });
});

const learner = { failureRate: 0.2, attempts: 5, learners: 5 };
test.each([
  ["rates the wrong way round", () => learningCusum([], { ...rule, adequateFailureRate: 0.4 }), "bad-parameter"],
  ["an adequate rate of 0", () => learningCusum([], { ...rule, adequateFailureRate: 0 }), "bad-parameter"],
  ["an inadequate rate of 1", () => learningCusum([], { ...rule, inadequateFailureRate: 1 }), "bad-parameter"],
  ["no limit", () => learningCusum([], { ...rule, limit: 0 }), "bad-parameter"],
  [
    "a rate above 1",
    () => simulateOperatingCharacteristic(rule, { ...learner, failureRate: 1.1 }, seeded(1)),
    "bad-parameter",
  ],
  ["no learner", () => simulateOperatingCharacteristic(rule, { ...learner, learners: 0 }, seeded(1)), "bad-count"],
  [
    "half an attempt",
    () => simulateOperatingCharacteristic(rule, { ...learner, attempts: 0.5 }, seeded(1)),
    "bad-count",
  ],
])("%s is no rule and no learner", (_why, ask, code) => {
  expect(ask).toThrow(StatisticsError);
  expect(ask).toThrow(expect.objectContaining({ code }));
});
