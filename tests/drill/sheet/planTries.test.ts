import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { conditionsAt } from "../../../src/drill/sheet/conditionsAt";
import { planTries, tryOrder } from "../../../src/drill/sheet/planTries";
import { seededChance } from "../../../src/statistics/chance";
import { anySheet } from "../../support/anySheet";
import {
  changeStation,
  dialingStation,
  handoverStation,
  testSheet,
  troubleStation,
  zeroingStation,
} from "../../support/testSheet";

// A loaded machine must not make a property fail.
vi.setConfig({ testTimeout: 60_000 });

const stationsOf = (repetitions: number[], order: "blocked" | "interleaved" | "random", seed = 1) =>
  tryOrder(repetitions, order, seededChance(seed)).map(({ station }) => station);

test.each([
  { order: "blocked", repetitions: [2, 3, 1], stations: [0, 0, 1, 1, 1, 2] },
  { order: "interleaved", repetitions: [2, 3, 1], stations: [0, 1, 2, 0, 1, 1] },
  { order: "interleaved", repetitions: [1, 1], stations: [0, 1] },
] as const)("$order $repetitions goes to $stations", ({ order, repetitions, stations }) => {
  expect(stationsOf([...repetitions], order)).toEqual(stations);
});

const repetitions = fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 6 });
const order = fc.constantFrom("blocked" as const, "interleaved" as const, "random" as const);

test("every order holds each try once, repetitions counted up in the order they come", () => {
  fc.assert(
    fc.property(repetitions, order, fc.integer(), (counts, how, seed) => {
      const places = tryOrder(counts, how, seededChance(seed));
      counts.forEach((count, station) => {
        const here = places.filter((place) => place.station === station).map(({ repetition }) => repetition);
        expect(here).toEqual(Array.from({ length: count }, (_, k) => k + 1));
      });
      expect(places).toHaveLength(counts.reduce((sum, count) => sum + count, 0));
    }),
  );
});

test("a seed gives one random order, and another seed another", () => {
  expect(stationsOf([10, 10], "random", 3)).toEqual(stationsOf([10, 10], "random", 3));
  expect(stationsOf([10, 10], "random", 3)).not.toEqual(stationsOf([10, 10], "random", 4));
});

test("any sheet is planned the same for the same seed", () => {
  fc.assert(
    fc.property(anySheet, fc.integer(), (sheet, seed) => {
      expect(planTries(sheet, seededChance(seed))).toEqual(planTries(sheet, seededChance(seed)));
    }),
    { numRuns: 50 },
  );
});

/** Rules that leave two combinations: 38-71-26, which the three-wheel lock has, and 71-38-26. */
const TWO_LEFT = {
  excluded: [[0, 25] as const, [27, 37] as const, [39, 70] as const, [72, 99] as const],
  excludedLast: [[0, 25] as const, [27, 99] as const],
  minSeparation: 2,
};

describe("combinations", () => {
  const planned = (station: Parameters<typeof dialingStation>[0]) =>
    planTries(testSheet({ stations: [dialingStation(station)] }), seededChance(5)).map(
      ({ combination }) => combination,
    );

  test("as set: the lock's own, every time", () => {
    expect(planned({ repetitions: 2 })).toEqual([
      [38, 71, 26],
      [38, 71, 26],
    ]);
  });

  test("fixed: in turn, and again from the first", () => {
    const list = [
      [33, 67, 38],
      [72, 23, 81],
    ];
    expect(planned({ repetitions: 3, combinations: { policy: "fixed", list } })).toEqual([...list, list[0]]);
  });

  test("drawn: anew for every try, or once for the station", () => {
    const each = planned({ repetitions: 6, combinations: { policy: "drawn" } });
    const once = planned({ repetitions: 6, combinations: { policy: "drawn", each: "station" } });
    expect(new Set(each.map(String)).size).toBe(6);
    expect(new Set(once.map(String)).size).toBe(1);
  });

  test.each([
    zeroingStation({ repetitions: 1 }),
    troubleStation({ repetitions: 1 }),
    handoverStation({ repetitions: 1 }),
  ])("none where the exercise brings its own: $kind", (station) => {
    const sheet = testSheet({ stations: [station] });
    expect(planTries(sheet, seededChance(1)).map(({ combination }) => combination)).toEqual([null]);
  });

  test("of a change: the new one, and never the one that is set", () => {
    const station = changeStation({ repetitions: 30, combinations: { policy: "drawn", rules: TWO_LEFT } });
    const drawn = planTries(testSheet({ stations: [station] }), seededChance(3)).map(({ combination }) => combination);
    expect(new Set(drawn.map(String))).toEqual(new Set(["71,38,26"]));
    const fixed = changeStation({ repetitions: 2, combinations: { policy: "fixed", list: [[33, 67, 38]] } });
    expect(planTries(testSheet({ stations: [fixed] }), seededChance(3)).map(({ combination }) => combination)).toEqual([
      [33, 67, 38],
      [33, 67, 38],
    ]);
  });

  test("of a change there is none where the rules leave only the one that is set", () => {
    const station = changeStation({ combinations: { policy: "drawn", rules: { ...TWO_LEFT, noStraight: true } } });
    expect(() => planTries(testSheet({ stations: [station] }), seededChance(1))).toThrow(
      "the rules leave no combination but the one that is set",
    );
  });
});

test.each([
  { repetition: 1, indexOffset: 0, dial: "usual", why: "nothing has begun" },
  { repetition: 5, indexOffset: 0, dial: "light", why: "the light dial holds from five" },
  { repetition: 6, indexOffset: 0.4, dial: "light", why: "the offset from six" },
  { repetition: 9, indexOffset: -1, dial: "heavy", why: "the later in the list wins" },
])("conditions of try $repetition: $why", ({ repetition, indexOffset, dial }) => {
  const station = dialingStation({
    conditions: [
      { kind: "index-offset", size: 0.4, from: 6 },
      { kind: "light-dial", from: 5 },
      { kind: "index-offset", size: -1, from: 8 },
      { kind: "heavy-dial", from: 9 },
      { kind: "no-cutaway" },
    ],
  });
  expect(conditionsAt(station, repetition)).toEqual({ indexOffset, dial, cutaway: false, lostMotion: 0, noise: 0 });
});
