import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { chanceOfOpening, type Hand, simulateOdds } from "../../../src/drill/combinations/odds";
import { DrillError } from "../../../src/drill/drillError";
import type { Profile } from "../../../src/lock/profile";
import { SHIPPED_PROFILES, shippedProfile } from "../../../src/lock/shippedProfiles";
import { seededChance } from "../../../src/statistics/chance";

const PROFILES = SHIPPED_PROFILES.map((profile) => [profile.id, profile] as const);
const threeWheel = shippedProfile("three-wheel");

const HANDS: readonly (Hand & { readonly why: string })[] = [
  { why: "a steady hand", bias: 0, spread: 0.5 },
  { why: "a hand that runs past", bias: 0.4, spread: 0.6 },
  { why: "a hand that stops short", bias: -0.5, spread: 0.5 },
  { why: "a wild hand", bias: 0.1, spread: 1.2 },
];

/** P(|e| <= tolerance) for every number, judged by a library that the product does not use. */
const judged = (profile: Profile, { bias, spread }: Hand) =>
  profile.procedure
    .map((_, k) => (profile.kind === "wheel-pack" ? (profile.wheelPack.gateTolerance[k] ?? 0) : profile.stopTolerance))
    .map((tolerance) => jstat.normal.cdf(tolerance, bias, spread) - jstat.normal.cdf(-tolerance, bias, spread))
    .reduce((product, probability) => product * probability, 1);

describe.each(PROFILES)("the odds of opening the %s lock", (_, profile) => {
  test.each(HANDS)("in closed form, for $why", (hand) => {
    expect(chanceOfOpening(profile, hand)).toBeCloseTo(judged(profile, hand), 12);
  });

  test.each(HANDS)("are what simulated attempts come to, for $why", (hand) => {
    const trials = 2000;
    const exact = chanceOfOpening(profile, hand);
    const { opened, probability, standardError } = simulateOdds(profile, hand, trials, seededChance(20_261_125));
    const error = Math.sqrt((exact * (1 - exact)) / trials);
    expect(Math.abs(probability - exact)).toBeLessThan(4 * error);
    expect(probability).toBe(opened / trials);
    expect(standardError).toBeCloseTo(Math.sqrt((probability * (1 - probability)) / trials), 12);
  });
});

describe("hands without any spread", () => {
  test.each([
    { bias: 0, opens: 1 },
    { bias: 1.25, opens: 1 },
    { bias: -1.25, opens: 1 },
    { bias: 1.2578125, opens: 0 },
    { bias: -1.2578125, opens: 0 },
  ])("open always or never: bias $bias opens $opens", ({ bias, opens }) => {
    expect(chanceOfOpening(threeWheel, { bias, spread: 0 })).toBe(opens);
    expect(simulateOdds(threeWheel, { bias, spread: 0 }, 50, seededChance(3), [38, 71, 26])).toMatchObject({
      opened: 50 * opens,
      probability: opens,
      standardError: 0,
    });
  });
});

test("the same seed gives the same attempts, another seed others", () => {
  const odds = (seed: number) => simulateOdds(threeWheel, { bias: 0, spread: 0.8 }, 500, seededChance(seed)).opened;
  expect(odds(1)).toBe(odds(1));
  expect(new Set([1, 2, 3, 4, 5].map(odds)).size).toBeGreaterThan(1);
});

test("a steadier hand opens more often, and so does a truer one", () => {
  const chances = [0.3, 0.6, 0.9, 1.2].map((spread) => chanceOfOpening(threeWheel, { bias: 0, spread }));
  expect(chances).toEqual([...chances].sort((a, b) => b - a));
  const biased = [0, 0.3, 0.6, 1].map((bias) => chanceOfOpening(threeWheel, { bias, spread: 0.5 }));
  expect(biased).toEqual([...biased].sort((a, b) => b - a));
});

describe("odds that cannot be", () => {
  test.each([
    { why: "no bias", hand: { bias: Number.NaN, spread: 1 }, trials: 10, says: "bias" },
    { why: "a spread below zero", hand: { bias: 0, spread: -0.1 }, trials: 10, says: "spread" },
    { why: "no spread", hand: { bias: 0, spread: Number.NaN }, trials: 10, says: "spread" },
    { why: "a boundless spread", hand: { bias: 0, spread: Number.POSITIVE_INFINITY }, trials: 10, says: "spread" },
    { why: "no trials", hand: { bias: 0, spread: 1 }, trials: 0, says: "trials" },
    { why: "half a trial", hand: { bias: 0, spread: 1 }, trials: 0.5, says: "trials" },
  ])("$why", ({ hand, trials, says }) => {
    const simulate = () => simulateOdds(threeWheel, hand, trials, seededChance(1));
    expect(simulate).toThrow(DrillError);
    expect(simulate).toThrow(expect.objectContaining({ code: `bad-${says}`, message: expect.stringContaining(says) }));
  });
});
