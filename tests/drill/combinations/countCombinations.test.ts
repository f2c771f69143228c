import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { explain } from "../../../src/drill/combinations/combinationRules";
import { combinationSpace } from "../../../src/drill/combinations/combinationSpace";
import { countCombinations } from "../../../src/drill/combinations/countCombinations";
import { combinationDrawer } from "../../../src/drill/combinations/drawCombination";
import type { CombinationRules } from "../../../src/lock/profile";
import { SHIPPED_PROFILES, shippedProfile } from "../../../src/lock/shippedProfiles";
import { seededChance } from "../../../src/statistics/chance";
import { anyRules } from "../../support/anyRules";
import { countByListing, everyCombination, keepsRules } from "../../support/combinationOracle";

const HANDBOOK = shippedProfile("three-wheel").combinationRules;

describe("published counts and counts by hand, three wheels of 100", () => {
  test.each([
    { count: 1_000_000, rules: {}, why: "no rules: MIL-HDBK-1013/8, section 2, item e" },
    { count: 640_000, rules: { excludedLast: HANDBOOK.excludedLast }, why: "e.2 alone: 64 last numbers of 100" },
    { count: 875_000, rules: { notAllEven: true }, why: "e.4 alone: 50^3 are all even" },
    { count: 676_600, rules: { noStraight: true }, why: "e.3 alone: 2 x C(100, 3) go straight" },
    { count: 729_000, rules: { multiplesOfTen: "numbers" }, why: "e.1, numbers: 90^3" },
    { count: 720_000, rules: { multiplesOfTen: "differences" }, why: "e.1, differences: 100 x 90 x 80" },
    { count: 222_156, rules: { oneFromEachThird: true }, why: "3! x 34 x 33 x 33" },
    { count: 97 ** 3, rules: { excluded: [13, [98, 99]] }, why: "own exclusions: three numbers nowhere, 97^3" },
  ] as { count: number; rules: CombinationRules; why: string }[])("$count: $why", ({ count, rules }) => {
    expect(countCombinations(shippedProfile("three-wheel"), rules)).toBe(count);
  });

  test("125,000 with no rules on some padlocks: 50^3 (MIL-HDBK-1013/8, section 2, item e)", () => {
    expect(combinationSpace({}, 50, 3).count).toBe(125_000);
  });
});

describe("every shipped lock, by looking at each of its combinations", { timeout: 60_000 }, () => {
  test.each(
    SHIPPED_PROFILES.filter(({ procedure }) => procedure.length <= 3).map((profile) => [profile.id, profile] as const),
  )("%s", (_, profile) => {
    const { combinationRules: rules, graduations, procedure } = profile;
    expect(countCombinations(profile)).toBe(countByListing(rules, graduations, procedure.length));
  });
});

describe("four to six wheels under the handbook's rules, on dials small enough to list", { timeout: 60_000 }, () => {
  test.each([
    { wheels: 4, perTurn: 30, minSeparation: 3 },
    { wheels: 5, perTurn: 17, minSeparation: 2 },
    { wheels: 6, perTurn: 11, minSeparation: 1 },
    { wheels: 6, perTurn: 10, minSeparation: 0 },
  ])("$wheels wheels of $perTurn, at least $minSeparation apart", ({ wheels, perTurn, minSeparation }) => {
    const rules: CombinationRules = {
      ...HANDBOOK,
      minSeparation,
      excludedLast: [
        [0, 2],
        [perTurn - 2, perTurn - 1],
      ],
    };
    expect(combinationSpace(rules, perTurn, wheels).count).toBe(countByListing(rules, perTurn, wheels));
  });
});

/** A dial and any rules for it; the more wheels, the fewer numbers, so that each can be listed. */
const smallDial = fc
  .constantFrom({ wheels: 2, most: 40 }, { wheels: 3, most: 24 }, { wheels: 4, most: 13 }, { wheels: 5, most: 10 })
  .chain(({ wheels, most }) =>
    fc
      .integer({ min: 10, max: most })
      .chain((perTurn) =>
        fc.record({ wheels: fc.constant(wheels), perTurn: fc.constant(perTurn), rules: anyRules(perTurn) }),
      ),
  );

test("any rules on any small dial count as listing does", () => {
  fc.assert(
    fc.property(smallDial, ({ wheels, perTurn, rules }) => {
      expect(combinationSpace(rules, perTurn, wheels).count).toBe(countByListing(rules, perTurn, wheels));
    }),
    { numRuns: 150 },
  );
}, 60_000);

test("explaining and listing agree on every combination", () => {
  const numbers = fc.array(fc.integer({ min: 0, max: 29 }), { minLength: 2, maxLength: 6 });
  fc.assert(
    fc.property(numbers, anyRules(30), (combination, rules) => {
      expect(explain(combination, rules, 30).length === 0).toBe(keepsRules(combination, rules, 30));
    }),
    { numRuns: 2000 },
  );
});

test("the largest lock under every rule at once is counted in seconds, not by listing 6.4e13", () => {
  const rules: CombinationRules = {
    ...HANDBOOK,
    minSeparation: 30,
    multiplesOfTen: "differences",
    oneFromEachThird: true,
  };
  const begun = performance.now();
  expect(combinationSpace(rules, 200, 6).count).toBeGreaterThan(0);
  expect(performance.now() - begun).toBeLessThan(60_000);
}, 90_000);

describe("drawing by rank", { timeout: 60_000 }, () => {
  const cases: { why: string; rules: CombinationRules; perTurn: number; wheels: number }[] = [
    {
      why: "numbers apart round the dial, not straight",
      rules: { minSeparation: 2, circular: true, noStraight: true, notAllOdd: true, excludedLast: [[0, 3]] },
      perTurn: 10,
      wheels: 3,
    },
    {
      why: "numbers that may come twice, not straight",
      rules: { noStraight: true, notAllEven: true, excluded: [[0, 5]] },
      perTurn: 10,
      wheels: 4,
    },
    {
      why: "differences and thirds",
      rules: {
        multiplesOfTen: "differences",
        oneFromEachThird: true,
        excluded: [
          [2, 3],
          [6, 9],
        ],
      },
      perTurn: 12,
      wheels: 3,
    },
    { why: "two numbers", rules: { notAllEven: true, minSeparation: 1 }, perTurn: 10, wheels: 2 },
  ];

  test.each(cases)("each allowed combination comes up about as often as any other: $why", (one) => {
    const { rules, perTurn, wheels } = one;
    const allowed = [...everyCombination(perTurn, wheels)].filter((numbers) => keepsRules(numbers, rules, perTurn));
    const space = combinationSpace(rules, perTurn, wheels);
    const chance = seededChance(4);
    const each = 60;
    const counts = new Map(allowed.map((numbers) => [numbers.join("-"), 0]));
    for (let i = 0; i < each * space.count; i++) {
      const name = space.draw(chance).join("-");
      counts.set(name, (counts.get(name) ?? 0) + 1);
    }
    expect([counts.size, space.count]).toEqual([allowed.length, allowed.length]);
    const chiSquare = [...counts.values()].reduce((sum, count) => sum + (count - each) ** 2 / each, 0);
    expect(chiSquare).toBeLessThan(jstat.chisquare.inv(0.9995, space.count - 1));
    expect(chiSquare).toBeGreaterThan(jstat.chisquare.inv(0.0005, space.count - 1));
  });

  test("keeps any rules on any small dial, wherever there is something to draw", () => {
    fc.assert(
      fc.property(smallDial, fc.integer(), ({ wheels, perTurn, rules }, seed) => {
        const space = combinationSpace(rules, perTurn, wheels);
        fc.pre(space.count > 0);
        const numbers = space.draw(seededChance(seed));
        expect(numbers).toHaveLength(wheels);
        expect(keepsRules(numbers, rules, perTurn), String(numbers)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  test("finds the one combination in a hundred million that very strict rules leave", () => {
    const fourWheel = shippedProfile("four-wheel");
    const rules: CombinationRules = {
      excluded: [
        [0, 10],
        [12, 90],
        [92, 99],
      ],
      notAllEven: true,
      excludedLast: [[0, 50]],
      minSeparation: 0,
      noStraight: true,
    };
    expect(countCombinations(fourWheel, rules)).toBe(8);
    const draw = combinationDrawer(fourWheel, rules);
    const chance = seededChance(11);
    const drawn = new Set(Array.from({ length: 200 }, () => draw(chance).join("-")));
    expect(drawn.size).toBe(8);
  });
});
