import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import * as counting from "../../../src/drill/combinations/countCombinations";
import { parseSheet } from "../../../src/drill/sheet/parseSheet";
import { rulesLeft } from "../../../src/drill/sheet/rulesLeft";
import type { CombinationRules, Profile } from "../../../src/lock/profile";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { anyRules } from "../../support/anyRules";
import { dialingStation, testSheet } from "../../support/testSheet";

const three = shippedProfile("three-wheel");

describe("what rules leave, as a sheet needs to know it", () => {
  test.each<readonly [string, CombinationRules, string]>([
    ["no rules", {}, "several"],
    ["the handbook's", three.combinationRules, "several"],
    ["every number barred", { excluded: [[0, 99]] }, "none"],
    ["every last number barred", { excludedLast: [[0, 99]] }, "none"],
    [
      "one number left for each place",
      {
        excluded: [
          [0, 6],
          [8, 99],
        ],
      },
      "one",
    ],
    ["a distance that three numbers cannot have", { minSeparation: 50 }, "none"],
    ["a distance longer than the dial, round it", { minSeparation: 105, circular: true }, "none"],
    ["one place alone where three numbers fit", { minSeparation: 49.5, excludedLast: [[1, 98]] }, "none"],
    ["a few orders of three marks", { minSeparation: 49 }, "several"],
  ])("%s: %s leaves %s", (_, rules, left) => {
    expect(rulesLeft(three, rules)).toBe(left);
  });

  test("agrees with the exact count on any rules", () => {
    fc.assert(
      fc.property(anyRules(100), (rules) => {
        const count = counting.countCombinations(three, rules);
        expect(rulesLeft(three, rules)).toBe(count === 0 ? "none" : count === 1 ? "one" : "several");
      }),
      { numRuns: 60 },
    );
  });
});

/** The link that once held a page for minutes: six numbers on a dial of 200, every rule on, forty times. */
const hardRules = (minSeparation: number): CombinationRules => ({
  minSeparation,
  circular: true,
  excludedLast: [[0, 20]],
  noStraight: true,
  notAllEven: true,
  notAllOdd: true,
  multiplesOfTen: "differences",
  oneFromEachThird: true,
  excluded: [13],
});

const sixNumbers: Profile = {
  ...shippedProfile("dial-encoder"),
  id: "six-numbers",
  graduations: 200,
  asSet: undefined,
  procedure: ["left", "right", "left", "right", "left", "right"].map((turn) => ({
    turn: turn === "left" ? "left" : "right",
    arrivals: 2,
    rule: "at-least",
  })),
  draw: { turn: "left", engageAt: 5, travel: 15, positiveStop: true },
};

const forty = (rulesAt: (k: number) => CombinationRules) =>
  testSheet({
    stations: Array.from({ length: 40 }, (_, k) =>
      dialingStation({ id: `s${k}`, profile: sixNumbers, combinations: { policy: "drawn", rules: rulesAt(k) } }),
    ),
  });

describe("a sheet of forty stations with hard rules counts nothing out", () => {
  test.each([
    ["alike", forty(() => hardRules(5))],
    ["each of its own", forty((k) => hardRules(5 + k / 8))],
  ])("%s", (_, sheet) => {
    const counted = vi.spyOn(counting, "countCombinations");
    expect(parseSheet(sheet).stations).toHaveLength(40);
    expect(counted).not.toHaveBeenCalled();
  });

  test("a distance that the dial has no room for is a sentence, not a crash", () => {
    expect(() => parseSheet(forty(() => hardRules(105)))).toThrow(
      "stations[0].combinations: the rules leave no combination for six-numbers; ease one of them",
    );
  });
});
