import { describe, expect, test } from "vitest";
import { explain } from "../../src/drill/combinations/combinationRules";
import { SHIPPED_PROFILES, shippedProfile } from "../../src/lock/shippedProfiles";
import { run } from "./fakeTerminal";

const HANDBOOK_FILE =
  '{"minSeparation":5,"circular":true,"excludedLast":[[0,20],[85,99]],"noStraight":true,"notAllEven":true,"notAllOdd":true,"multiplesOfTen":"numbers","oneFromEachThird":false}';

const FILES = {
  "none.json": "{}",
  "handbook.json": HANDBOOK_FILE,
  "tight.json": '{"minSeparation":60,"circular":true}',
  "typo.json": '{"minSeperation":5}',
  "backward.json": '{"excludedLast":[[20,0]]}',
  "words.json": '{"multiplesOfTen":"both"}',
  "list.json": "[]",
  "broken.json": "{",
};

const combinations = (...args: string[]) => run(["combinations", ...args], FILES);

describe("count", () => {
  test("prints exactly one object with --json", async () => {
    const { status, out } = await combinations("count", "--profile", "three-wheel", "--rules", "none.json", "--json");
    expect([status, out]).toEqual([0, '{"count":1000000}\n']);
  });

  test("takes the profile's own rules where none are given, here the handbook's", async () => {
    const own = await combinations("count", "--profile", "three-wheel", "--json");
    const same = await combinations("count", "--profile", "three-wheel", "--rules", "handbook.json", "--json");
    expect(own.out).toBe('{"count":191952}\n');
    expect(same.out).toBe(own.out);
  });

  test("says it in a sentence", async () => {
    const { out } = await combinations("count", "--profile", "four-wheel");
    expect(out).toBe("Four-wheel, 100 graduations: the rules allow 19,320,696 of 100,000,000 combinations\n");
  });
});

describe("draw", () => {
  test.each(SHIPPED_PROFILES.map(({ id }) => [id]))(
    "%s: as many as asked, all allowed, the same for a seed",
    async (id) => {
      const args = ["draw", "--profile", id, "--seed", "7", "--number-of", "20", "--json"];
      const { status, out } = await combinations(...args);
      const { combinations: drawn, seed } = JSON.parse(out);
      const { combinationRules, graduations } = shippedProfile(id);
      expect([status, seed, drawn.length]).toEqual([0, 7, 20]);
      for (const one of drawn) expect(explain(one, combinationRules, graduations)).toEqual([]);
      expect((await combinations(...args)).out).toBe(out);
      expect((await combinations(...args.with(4, "8"))).out).not.toBe(out);
    },
  );

  test("prints one a line", async () => {
    const { out } = await combinations("draw", "--profile", "two-wheel", "--number-of", "3");
    expect(out).toMatch(/^(\d+-\d+\n){3}$/);
  });
});

describe("explain", () => {
  test("lists every broken rule with its source", async () => {
    const { status, out } = await combinations("explain", "10-20-30", "--profile", "three-wheel");
    expect(status).toBe(0);
    expect(out).toMatch(/^10-20-30 breaks 3 rules\n/);
    for (const rule of ["noStraight", "notAllEven", "multiplesOfTen"]) expect(out).toContain(`  ${rule}: `);
    expect(out.match(/MIL-HDBK-1013\/8 \(1989\), section 2, item e\.\d/g)).toHaveLength(3);
  });

  test("says so where all is well", async () => {
    expect((await combinations("explain", "38-71-26", "--profile", "three-wheel")).out).toBe(
      "38-71-26 keeps every rule\n",
    );
    const { out } = await combinations("explain", "38-71-26", "--profile", "three-wheel", "--json");
    expect(JSON.parse(out)).toEqual({ combination: [38, 71, 26], allowed: true, broken: [] });
  });
});

describe("what cannot be done is said in a sentence", () => {
  test.each([
    { args: [], status: 2, says: "count, draw or explain" },
    { args: ["guess", "--profile", "three-wheel"], status: 2, says: '"guess"' },
    { args: ["toString", "--profile", "three-wheel"], status: 2, says: '"toString"' },
    { args: ["count"], status: 2, says: "--profile" },
    { args: ["count", "38-71-26", "--profile", "three-wheel"], status: 2, says: "38-71-26" },
    { args: ["count", "--profile", "three-wheel", "--rules", "nowhere.json"], status: 2, says: "nowhere.json" },
    {
      args: ["count", "--profile", "three-wheel", "--rules", "broken.json"],
      status: 2,
      says: "broken.json is not JSON",
    },
    { args: ["draw", "--profile", "three-wheel", "--seed", "one"], status: 2, says: '"one"' },
    { args: ["draw", "--profile", "three-wheel", "--seed", "1.5"], status: 2, says: "1.5" },
    { args: ["draw", "--profile", "three-wheel", "--number-of", "0"], status: 2, says: "--number-of" },
    { args: ["explain", "--profile", "three-wheel"], status: 2, says: "one combination" },
    { args: ["explain", "1-2-3", "4-5-6", "--profile", "three-wheel"], status: 2, says: "one combination" },
    { args: ["explain", "38-71", "--profile", "three-wheel"], status: 1, says: "takes 3" },
    { args: ["explain", "38-71-x", "--profile", "three-wheel"], status: 1, says: "combination[2]" },
    { args: ["explain", "38-71-100", "--profile", "three-wheel"], status: 1, says: "write 0" },
    { args: ["count", "--profile", "no-such"], status: 1, says: "no-such" },
    {
      args: ["count", "--profile", "three-wheel", "--rules", "typo.json"],
      status: 1,
      says: 'rules: this has "minSeperation", which is not a rule',
    },
    { args: ["count", "--profile", "three-wheel", "--rules", "backward.json"], status: 1, says: "excludedLast[0]" },
    { args: ["count", "--profile", "three-wheel", "--rules", "words.json"], status: 1, says: "multiplesOfTen" },
    {
      args: ["count", "--profile", "three-wheel", "--rules", "list.json"],
      status: 1,
      says: "rules: this must be an object",
    },
    { args: ["draw", "--profile", "three-wheel", "--rules", "tight.json"], status: 1, says: "leave no combination" },
  ])("$args: $says", async ({ args, status, says }) => {
    const outcome = await combinations(...args);
    expect([outcome.status, outcome.out]).toEqual([status, ""]);
    expect(outcome.complaints).toHaveLength(1);
    expect(outcome.complaints[0]).toContain(says);
  });

  test("rules that leave nothing count as none, which is no fault", async () => {
    const { status, out } = await combinations("count", "--profile", "three-wheel", "--rules", "tight.json", "--json");
    expect([status, out]).toEqual([0, '{"count":0}\n']);
  });
});
