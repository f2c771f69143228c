import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chanceOfOpening } from "../../src/drill/combinations/odds";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { personalBests } from "../../src/progress/personalBest";
import { chanceOnLock } from "../../src/progress/stops/chanceOnLock";
import { firstTimeOpenings } from "../../src/progress/stops/firstTimeOpenings";
import { heatStrip } from "../../src/progress/stops/heatStrip";
import { progressCharts, progressCurve } from "../../src/progress/stops/progressCharts";
import { MEASURE_UNITS, progressPoints } from "../../src/progress/stops/progressMeasure";
import { stopTable } from "../../src/progress/stops/stopTable";
import { stopThroughput } from "../../src/progress/stops/stopThroughput";
import { type Chance, seededChance } from "../../src/statistics/chance";
import { drawNormal } from "../../src/statistics/drawNormal";
import { anAttempt, attempts, NOON, stopsOf } from "../support/logbookRecords";

/** Attempts of a hand of known bias and spread. */
const drawn = (count: number, bias: number, spread: number, chance: Chance) =>
  Array.from({ length: count }, (_, i) =>
    anAttempt(`d${i}`, { stops: stopsOf(...[0, 0, 0].map(() => drawNormal(chance, bias, spread))) }),
  );

describe("first-time openings", () => {
  test("are those of the scenario: 17 of 20 is 64 % to 95 %", () => {
    const tries = Array.from({ length: 20 }, (_, i) => ({ opened: i < 17 }));
    const found = firstTimeOpenings(tries);
    expect(found).toMatchObject({ opened: 17, trials: 20, share: 0.85 });
    expect([found?.interval.low.toFixed(2), found?.interval.high.toFixed(2)]).toEqual(["0.64", "0.95"]);
  });

  test("of no attempt are no number", () => {
    expect(firstTimeOpenings([])).toBeNull();
  });
});

describe("the table of stops", () => {
  test("keeps bias apart from spread, for each number and each direction", () => {
    const table = stopTable([{ stops: stopsOf(1, -1, 0) }, { stops: stopsOf(2, -1, 0) }]);
    expect(table.bySteps.map((one) => [one?.bias, one?.spread])).toEqual([
      [1.5, Math.SQRT1_2],
      [-1, 0],
      [0, 0],
    ]);
    expect(table.byTurns.right).toMatchObject({ count: 2, bias: -1 });
    expect(table.byTurns.left).toMatchObject({ count: 4, bias: 0.75 });
  });

  test("leaves lost counts out of the aim, and says how many", () => {
    const table = stopTable([{ stops: stopsOf(0.5, 40, 0.5) }]);
    expect(table).toMatchObject({
      leftOut: 1,
      all: { count: 2, bias: 0.5 },
      bySteps: [{ count: 1 }, null, { count: 1 }],
    });
  });

  test("of no stop is empty", () => {
    expect(stopTable([])).toEqual({ all: null, bySteps: [], byTurns: { left: null, right: null }, leftOut: 0 });
  });
});

describe("throughput", () => {
  test("is that of Fitts: 300 graduations into 4.133 standard deviations in 4 s", () => {
    const tries = [-1, 0, 1].map((error) => ({ stops: stopsOf(error) }));
    expect(stopThroughput(tries)[0]?.throughput_bitsPerSecond).toBeCloseTo(Math.log2(300 / 4.133 + 1) / 4, 9);
  });

  test("is none without times, or where all stops fall on one spot", () => {
    const untimed = { stops: stopsOf(0, 1).map((stop) => ({ ...stop, time_ms: 0 })) };
    expect(stopThroughput([untimed, untimed])).toEqual([]);
    expect(stopThroughput([{ stops: stopsOf(1) }, { stops: stopsOf(1) }])).toEqual([null]);
  });
});

describe("the heat strip", () => {
  test("finds every near stop in exactly one stretch", () => {
    fc.assert(
      fc.property(attempts, fc.integer({ min: 1, max: 20 }), (some, count) => {
        const bins = heatStrip(some, 100, count);
        expect(bins).toHaveLength(count);
        expect([bins[0]?.from, bins.at(-1)?.to]).toEqual([0, 100]);
        expect(bins.reduce((sum, { errors }) => sum + (errors?.count ?? 0), 0)).toBe(3 * some.length);
      }),
    );
  });

  test("shows where one stops badly", () => {
    const [low, high] = heatStrip([{ stops: stopsOf(3, 0, 4) }, { stops: stopsOf(-3) }], 100, 2);
    expect([low?.badness, low?.errors?.bias]).toEqual([Math.sqrt(6), 0]);
    expect(high).toMatchObject({ from: 50, to: 100, badness: 4 });
  });
});

describe("the predicted chance of opening", () => {
  test("is the closed form of the odds with one's own bias and spread", () => {
    const tries = drawn(400, 0.6, 0.5, seededChance(4));
    const table = stopTable(tries);
    const pooled = chanceOfOpening(shippedProfile("three-wheel"), {
      bias: table.all?.bias ?? 0,
      spread: table.all?.spread ?? 0,
    });
    expect(Math.abs((chanceOnLock(tries, 1.25)?.chance ?? 0) - pooled)).toBeLessThan(0.01);
  });

  test.each([
    ["Tavro", -0.2, 0.6, 20],
    ["Dorvik", 0.6, 0.5, 20],
    ["Jorrel", 0, 0.9, 40],
  ])("of %s lies in its interval about 95 times in 100", (_name, bias, spread, count) => {
    const chance = seededChance(17);
    const truth = chanceOfOpening(shippedProfile("three-wheel"), { bias, spread });
    const rounds = 600;
    const held = Array.from({ length: rounds }, () => chanceOnLock(drawn(count, bias, spread, chance), 1.25)).filter(
      (one) => one !== null && one.interval.low <= truth && truth <= one.interval.high,
    ).length;
    expect(held / rounds).toBeGreaterThan(0.91);
    expect(held / rounds).toBeLessThan(0.99);
  });

  test("grows with the tolerance and stays within its interval", () => {
    const tries = drawn(12, 0.3, 0.7, seededChance(3));
    const tolerance = fc.double({ min: 0.05, max: 4, noNaN: true });
    fc.assert(
      fc.property(tolerance, tolerance, (one, other) => {
        const [narrow, wide] = [Math.min(one, other), Math.max(one, other)].map((width) => chanceOnLock(tries, width));
        expect(narrow?.chance).toBeLessThanOrEqual(wide?.chance ?? 0);
        for (const found of [narrow, wide]) {
          expect(found?.interval.low).toBeLessThanOrEqual(found?.chance ?? 0);
          expect(found?.interval.high).toBeGreaterThanOrEqual(found?.chance ?? 1);
        }
      }),
    );
  });

  test("is not said of a few stops", () => {
    expect(chanceOnLock([], 1)).toBeNull();
    expect(chanceOnLock(drawn(4, 0, 1, seededChance(1)), 1)).toBeNull();
    expect(chanceOnLock(drawn(5, 0, 0, seededChance(1)), 1)).toEqual({
      chance: 1,
      interval: { low: 1, high: 1 },
      stops: 5,
    });
  });
});

describe("charts of progress", () => {
  const timed = (seconds: readonly number[]) =>
    seconds.map((time, i) => anAttempt(`t${i}`, { startedAt: NOON + i, duration_ms: 1000 * time, opened: time > 0 }));

  test("a miss is no quick opening, and leaves a gap", () => {
    const points = progressPoints(timed([40, 0, 30]), "time");
    expect(points).toEqual([
      { number: 1, value: 40, attemptId: "t0" },
      { number: 3, value: 30, attemptId: "t2" },
    ]);
  });

  test("every measure has the unit of its axis", () => {
    expect(MEASURE_UNITS).toEqual({ time: "s", bias: "graduations", "worst-stop": "graduations" });
  });

  test("bias has its sign, the worst stop has none", () => {
    const tries = [anAttempt("a", { stops: stopsOf(-2, 1, 0.25) })];
    expect(progressPoints(tries, "bias")[0]?.value).toBe(-0.25);
    expect(progressPoints(tries, "worst-stop")[0]?.value).toBe(2);
  });

  test("a lasting shift after the baseline leaves the limits", () => {
    const steady = [40, 41, 39, 40, 42, 38, 41, 40, 39, 41];
    const charts = progressCharts(progressPoints(timed([...steady, 44, 44, 44, 60]), "time"));
    expect(charts?.baseline).toBe(10);
    expect(charts?.individuals.beyond).toEqual([13]);
    expect(charts?.ewma?.beyond).toContain(2);
    expect(progressCharts(progressPoints(timed([40]), "time"))).toBeNull();
  });

  test("an exponential learner gets the curve back, another a reason", () => {
    const learning = timed(Array.from({ length: 30 }, (_, i) => 30 + 40 * Math.exp(-0.2 * i) + 0.5 * (-1) ** i));
    const curve = progressCurve(progressPoints(learning, "time"));
    expect(curve.kind).toBe("fitted");
    if (curve.kind === "fitted") {
      expect(curve.asymptoteInterval.low).toBeLessThan(30);
      expect(curve.asymptoteInterval.high).toBeGreaterThan(30);
    }
    expect(progressCurve([])).toMatchObject({ kind: "unsupported", message: expect.stringMatching(/\.$/) });
  });
});

describe("a personal best", () => {
  test("stands for exact settings only, and conditions have no order", () => {
    const tries = [
      anAttempt("a", { duration_ms: 40_000, conditions: ["noise", "index offset 0.4"] }),
      anAttempt("b", { duration_ms: 30_000, conditions: ["index offset 0.4", "noise"], stops: stopsOf(2) }),
      anAttempt("c", { duration_ms: 10_000, help: "full" }),
      anAttempt("d", { duration_ms: 5000, opened: false, conditions: ["noise", "index offset 0.4"] }),
    ];
    const [hard, easy] = personalBests(tries);
    expect([hard?.attempts, hard?.quickest?.id, hard?.truest?.id]).toEqual([3, "b", "a"]);
    expect([easy?.attempts, easy?.quickest?.id]).toEqual([1, "c"]);
  });

  test("is no slower than any opening under its settings", () => {
    fc.assert(
      fc.property(attempts, (some) => {
        const bests = personalBests(some);
        expect(bests.reduce((sum, best) => sum + best.attempts, 0)).toBe(some.length);
        const opened = some.filter((one) => one.opened);
        const isMatched = opened.every((one) =>
          bests.some(
            ({ profileId, help, quickest }) => profileId === one.profileId && help === one.help && quickest !== null,
          ),
        );
        expect(isMatched).toBe(true);
      }),
    );
  });
});
