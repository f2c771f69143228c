import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { explain } from "../../../src/drill/combinations/combinationRules";
import { drawCombination } from "../../../src/drill/combinations/drawCombination";
import { DrillError } from "../../../src/drill/drillError";
import { DRILL_WORDS } from "../../../src/drill/drillWords";
import type { Combination } from "../../../src/lock/combination";
import type { CombinationRules } from "../../../src/lock/profile";
import { parseProfile } from "../../../src/lock/profileSchema";
import { SHIPPED_PROFILES, shippedProfile } from "../../../src/lock/shippedProfiles";
import { seededChance } from "../../../src/statistics/chance";
import { wordsOf } from "../../../src/wording/problem";

const HANDBOOK = shippedProfile("three-wheel").combinationRules;
const PROFILES = SHIPPED_PROFILES.map((profile) => [profile.id, profile] as const);

const broken = (numbers: Combination, rules: CombinationRules = HANDBOOK, perTurn = 100) =>
  explain(numbers, rules, perTurn).map(({ rule }) => rule);

// MIL-HDBK-1013/8, "Combination Locks" (31 Dec 1989), section 2, items e.1 to e.5; its own examples.
describe("the handbook's rules, on its own examples", () => {
  test.each([
    { numbers: [41, 56, 71], rules: ["noStraight"], item: "e.3, bad" },
    {
      numbers: [81, 58, 30],
      rules: ["noStraight", "multiplesOfTen"],
      item: "e.3, bad; 30 is a multiple of ten as well",
    },
    { numbers: [72, 23, 81], rules: [], item: "e.3, good" },
    { numbers: [33, 67, 38], rules: [], item: "e.3, good; 38 - 33 is exactly five, which e.1 lets pass" },
  ])("$numbers breaks $rules ($item)", ({ numbers, rules }) => {
    expect(broken(numbers)).toEqual(rules);
  });
});

describe("spacing", () => {
  test.each([
    { why: "exactly five apart", numbers: [33, 67, 38], isBroken: false },
    { why: "four apart", numbers: [33, 67, 37], isBroken: true },
    { why: "four apart, next to each other in order", numbers: [33, 37, 61], isBroken: true },
    { why: "the same number twice", numbers: [33, 67, 33], isBroken: true },
    { why: "five apart across the zero", numbers: [97, 2, 61], isBroken: false },
    { why: "four apart across the zero", numbers: [98, 2, 61], isBroken: true },
  ])("$why: broken $isBroken", ({ numbers, isBroken }) => {
    expect(broken(numbers).includes("minSeparation")).toBe(isBroken);
  });

  test("across the zero is far where the distance is not taken round the dial", () => {
    expect(broken([98, 2, 61], { minSeparation: 5, circular: false })).toEqual([]);
  });
});

describe("the last number", () => {
  test.each([
    ...[0, 1, 20, 85, 99].map((last) => ({ last, isBroken: true })),
    ...[21, 50, 84].map((last) => ({ last, isBroken: false })),
  ])("$last: broken $isBroken (e.2: not 0 to 20 nor 85 to 100; 100 is the mark 0)", ({ last, isBroken }) => {
    expect(broken([47, 63, last]).includes("excludedLast")).toBe(isBroken);
  });

  test("only the last number is bound by it", () => {
    expect(broken([6, 91, 33])).toEqual([]);
  });
});

describe("order and parity", () => {
  test.each([
    { numbers: [26, 48, 34], rules: ["notAllEven"], why: "e.4: all even" },
    { numbers: [27, 49, 35], rules: ["notAllOdd"], why: "e.5: all odd" },
    { numbers: [26, 49, 34], rules: [], why: "one odd is enough" },
    { numbers: [23, 48, 71], rules: ["noStraight"], why: "straight up" },
    { numbers: [71, 48, 23], rules: ["noStraight"], why: "straight down" },
    { numbers: [48, 23, 71], rules: [], why: "down and up" },
  ])("$numbers breaks $rules: $why", ({ numbers, rules }) => {
    expect(broken(numbers)).toEqual(rules);
  });
});

describe("multiples of ten, in both readings of e.1", () => {
  test.each([
    { reading: "numbers", numbers: [33, 70, 26], isBroken: true },
    { reading: "numbers", numbers: [0, 67, 26], isBroken: true },
    { reading: "numbers", numbers: [33, 67, 43], isBroken: false },
    { reading: "differences", numbers: [33, 67, 43], isBroken: true },
    { reading: "differences", numbers: [33, 70, 26], isBroken: false },
    { reading: "differences", numbers: [3, 47, 93], isBroken: true },
  ] as const)("$numbers by $reading: broken $isBroken", ({ reading, numbers, isBroken }) => {
    expect(broken(numbers, { multiplesOfTen: reading })).toEqual(isBroken ? ["multiplesOfTen"] : []);
  });
});

test.each([
  { numbers: [12, 45, 78], isBroken: false },
  { numbers: [78, 12, 45], isBroken: false },
  { numbers: [12, 30, 78], isBroken: true },
  { numbers: [33, 34, 67], isBroken: false },
])("one number from each third (NAVEDTRA 14244): $numbers broken $isBroken", ({ numbers, isBroken }) => {
  expect(broken(numbers, { oneFromEachThird: true })).toEqual(isBroken ? ["oneFromEachThird"] : []);
});

test("no rules break nothing", () => {
  expect(broken([20, 20, 20], {})).toEqual([]);
});

test("every broken rule is told with a sentence and its source", () => {
  const told = explain([10, 8, 6], { ...HANDBOOK, oneFromEachThird: true }, 100);
  expect(told.map(({ rule }) => rule)).toEqual([
    "minSeparation",
    "excludedLast",
    "noStraight",
    "notAllEven",
    "multiplesOfTen",
    "oneFromEachThird",
  ]);
  for (const { problem, source } of told) {
    expect(wordsOf(problem, DRILL_WORDS)).toMatch(/^\S.{5,}$/);
    expect(source).toMatch(/MIL-HDBK-1013\/8 \(1989\), section 2, item e\.\d|NAVEDTRA 14244/);
  }
});

describe.each(PROFILES)("the %s lock", (_, profile) => {
  test("comes with a combination that obeys its own rules", () => {
    expect(profile.asSet).toHaveLength(profile.procedure.length);
    expect(explain(profile.asSet ?? [], profile.combinationRules, profile.graduations)).toEqual([]);
  });

  test("draws only combinations that its rules allow, whole numbers on its dial", () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const numbers = drawCombination(profile, seededChance(seed));
        expect(numbers).toHaveLength(profile.procedure.length);
        expect(numbers.every((one) => Number.isInteger(one) && one >= 0 && one < profile.graduations)).toBe(true);
        expect(explain(numbers, profile.combinationRules, profile.graduations)).toEqual([]);
      }),
    );
  });

  test("draws the same combinations from the same seed", () => {
    const drawn = (seed: number) => {
      const chance = seededChance(seed);
      return Array.from({ length: 20 }, () => drawCombination(profile, chance));
    };
    expect(drawn(7)).toEqual(drawn(7));
    expect(drawn(7)).not.toEqual(drawn(8));
  });
});

describe("a small dial, every combination of which can be listed", () => {
  const small = parseProfile({
    id: "small",
    kind: "dial-encoder",
    graduations: 12,
    procedure: [
      { turn: "left", arrivals: 2, rule: "at-least" },
      { turn: "right", arrivals: 1, rule: "at-least" },
    ],
    draw: { turn: "left", travel: 2 },
    combinationRules: { minSeparation: 2, circular: true, excludedLast: [[0, 2]], notAllEven: true, notAllOdd: true },
  });
  const marks = Array.from({ length: 12 }, (_, mark) => mark);
  /** The same rules, written out for two numbers. */
  const isAllowed = (a: number, b: number) => {
    const way = Math.abs(a - b);
    return Math.min(way, 12 - way) >= 2 && b > 2 && (a % 2 === 0 || b % 2 === 0) && (a % 2 === 1 || b % 2 === 1);
  };
  const allowed = marks.flatMap((a) => marks.filter((b) => isAllowed(a, b)).map((b) => `${a}-${b}`));

  test("each is drawn about as often as any other", () => {
    const chance = seededChance(20_261_125);
    const each = 200;
    const counts = new Map(allowed.map((one) => [one, 0]));
    for (let i = 0; i < each * allowed.length; i++) {
      const name = drawCombination(small, chance).join("-");
      counts.set(name, (counts.get(name) ?? 0) + 1);
    }
    expect([...counts.keys()]).toEqual(allowed);
    const chiSquare = [...counts.values()].reduce((sum, count) => sum + (count - each) ** 2 / each, 0);
    expect(chiSquare).toBeLessThan(jstat.chisquare.inv(0.999, allowed.length - 1));
    // Too even to be chance would be as suspicious.
    expect(chiSquare).toBeGreaterThan(jstat.chisquare.inv(0.001, allowed.length - 1));
  });

  test("rules that leave nothing say so", () => {
    const draw = () => drawCombination(small, seededChance(1), { minSeparation: 7, circular: true });
    expect(draw).toThrow(DrillError);
    expect(draw).toThrow(expect.objectContaining({ code: "no-combination" }));
  });
});
