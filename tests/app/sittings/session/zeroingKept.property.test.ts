import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { keptTryWrite, tryWrite } from "../../../../src/app/sittings/session/sittingLogbook";
import { trySetup } from "../../../../src/app/sittings/tries/trySetup";
import { ZeroingTry } from "../../../../src/app/sittings/tries/zeroingTry";
import type { Graduations, Turn } from "../../../../src/lock/dial";
import { zeroingOutcome } from "../../../../src/records/zeroing/zeroingOutcome";
import { testSheet, zeroingStation } from "../../../support/testSheet";

const OWNER = { sittingId: "sitting", personId: "person", index: 0, now_ms: 1_800_000_000_000 };
const SEED = 3;

/** How far off the mark each stop of a side is, graduations, over and over. */
type Stops = readonly [Graduations, ...Graduations[]];

const GOOD: Stops = [0, 0.02, -0.02];
const FAR_OFF: Stops = [1.3, 1.32, 1.28];
const OPEN: Stops = [0.3, 0.6, 0.1];
const RESTLESS: Stops = [0, 0.9];

/** A try at setting zero, read as often as it asks, at most so many times, and then ended. */
function tried(stops: Readonly<Record<Turn, Stops>>, most = 20): ZeroingTry {
  const sheet = testSheet({ stations: [zeroingStation()] });
  const one = new ZeroingTry(trySetup(sheet, { station: 0, repetition: 1, combination: null }, SEED, 0));
  let clock = 0;
  for (let taken = 0; taken < most && one.session.asked !== null; taken++) {
    const side = one.session.asked;
    const off = stops[side][taken % stops[side].length] ?? 0;
    const sign = side === "left" ? 1 : -1;
    const way = sign * (off - one.session.lock.seenDeviation);
    const turned = sign * (way < 30 ? way + one.setup.profile.graduations : way);
    one.turnBy(turned / 2, clock + 500);
    one.turnBy(turned / 2, clock + 1000);
    clock += 3000;
    one.takeReading(clock);
  }
  one.end();
  return one;
}

/** What the logbook has of it, from the live try and from what a killed page kept of it. */
function bothWays(one: ZeroingTry) {
  const live = tryWrite(one, OWNER).record;
  const kept = keptTryWrite(one.setup, one.result(), { motion: null }, OWNER)?.record;
  return { live, kept };
}

const outcomeIn = (one: ZeroingTry) => {
  const { live, kept } = bothWays(one);
  return [live, kept].map((record) => (record !== undefined && "outcome" in record ? record.outcome : undefined));
};

describe("a zeroing of a sitting comes to the same, live and from what a killed page kept", () => {
  test.each([
    ["both shown to be good", { right: GOOD, left: GOOD }, ["accept", "accept"], "zero-set"],
    ["both rejected", { right: FAR_OFF, left: FAR_OFF }, ["reject", "reject"], "zero-set"],
    ["the first rejected", { right: FAR_OFF, left: GOOD }, ["reject", "accept"], "zero-set"],
    ["the second not shown", { right: GOOD, left: OPEN }, ["accept", "not shown yet"], "zero-set"],
  ] as const)("%s", (_, stops, verdicts, outcome) => {
    const one = tried(stops);
    expect([one.result().verdicts.right, one.result().verdicts.left]).toEqual(verdicts);
    expect(outcomeIn(one)).toEqual([outcome, outcome]);
  });

  test("the first direction never settles", () => {
    expect(outcomeIn(tried({ right: RESTLESS, left: GOOD }))).toEqual(["not-set", "not-set"]);
  });

  test("the second direction never settles", () => {
    expect(outcomeIn(tried({ right: GOOD, left: RESTLESS }))).toEqual(["not-set", "not-set"]);
  });

  test.each([0, 2, 4])("broken off after %i stops", (most) => {
    expect(outcomeIn(tried({ right: GOOD, left: GOOD }, most))).toEqual(["broken-off", "broken-off"]);
  });

  test("a result of an earlier version, without its stops, goes by its verdicts", () => {
    const one = tried({ right: FAR_OFF, left: FAR_OFF });
    const { readings: _, ...old } = one.result();
    expect(keptTryWrite(one.setup, old, { motion: null }, OWNER)?.record).toMatchObject({
      outcome: "zero-set",
      readings: [],
    });
    const { left: __, ...first } = old.verdicts;
    const broken = { ...old, verdicts: { ...first, left: null } };
    expect(keptTryWrite(one.setup, broken, { motion: null }, OWNER)?.record).toMatchObject({ outcome: "broken-off" });
  });

  test("whatever the stops are, and whenever it ends", () => {
    // Some are off the mark: those are refused.
    const off = fc.double({ min: -1.8, max: 1.8, noNaN: true });
    const stops = fc.tuple(off, off, off, off).map((all): Stops => all);
    const steady = fc.tuple(off, fc.double({ min: 0, max: 0.2, noNaN: true })).map(([at, by]): Stops => [at, at + by]);
    const side = fc.oneof(stops, steady, steady);
    fc.assert(
      fc.property(side, side, fc.integer({ min: 0, max: 30 }), (right, left, most) => {
        const one = tried({ right, left }, most);
        const { live, kept } = bothWays(one);
        expect(live).toHaveProperty("outcome", zeroingOutcome(one.session.state));
        expect(kept).toEqual({ ...live, details: { sittingId: "sitting" } });
      }),
      { numRuns: 300 },
    );
  });
});
