import { describe, expect, test } from "vitest";
import { idealMotion } from "../../../src/dialing/idealMotion";
import { drawTrouble, kindsFor } from "../../../src/handover/trouble/drawTrouble";
import { dialedInside, turnsUntilDrop } from "../../../src/handover/trouble/inside";
import type { TroubleKind, TroubleTask } from "../../../src/handover/trouble/trouble";
import { MOST_OFF, TroubleBench } from "../../../src/handover/trouble/troubleBench";
import { TroubleError } from "../../../src/handover/trouble/troubleError";
import { TroubleLock } from "../../../src/handover/trouble/troubleLock";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { seededChance } from "../../../src/statistics/chance";

const THREE = shippedProfile("three-wheel");
const FIXED = shippedProfile("fixed-pin");
const ENCODER = shippedProfile("dial-encoder");

/** A lock of known numbers with a condition of known size. */
const taskOf = (
  kind: TroubleKind,
  size: number,
  { profile = THREE, part = null as string | null, combination = [38, 71, 26], lostMotion = 0 } = {},
): TroubleTask => ({ card: { profile, combination, lostMotion }, trouble: { kind, part, size } });

const benchOf = (task: TroubleTask) => new TroubleBench(task, seededChance(9));
const opens = (task: TroubleTask, off: number[], rest = 0) => benchOf(task).dial(off, rest).opened;

describe("what follows from the mechanics", () => {
  test("an index slipped moves every number by as much", () => {
    const task = taskOf("index-slipped", 2);
    expect(opens(task, [0, 0, 0])).toBe(false);
    expect(opens(task, [-2, -2, -2])).toBe(true);
    expect(opens(task, [-2, -2, 0])).toBe(false);
  });

  test("lost motion moves the number dialed right, to the right, and the cam after a right turn", () => {
    const task = taskOf("lost-motion", 1.8);
    expect(opens(task, [0, 0, 0])).toBe(false);
    expect(opens(task, [0, -1.8, 0])).toBe(true);
    const bench = benchOf(task);
    expect(bench.readCam("left").value).toBeCloseTo(0, 0);
    expect(Math.abs(bench.readCam("right").value - 1.8)).toBeLessThan(0.2);
  });

  test("a wheel set off takes its own number only", () => {
    const task = taskOf("wheel-off", 3, { part: "1" });
    expect(opens(task, [3, 0, 0])).toBe(true);
    expect(opens(task, [0, 0, 0])).toBe(false);
    expect(opens(task, [1.8, 0, 0])).toBe(true);
    expect(opens(task, [1.7, 0, 0])).toBe(false);
  });

  test("narrow gates refuse a few tenths, wide ones take more than they should", () => {
    expect([0, 0.3, 0.5].map((off) => opens(taskOf("gates-tight", 0.4), [off, 0, 0]))).toEqual([true, true, false]);
    expect([1, 2.5, 3.2].map((off) => opens(taskOf("gates-wide", 3), [off, 0, 0]))).toEqual([true, true, false]);
  });

  test("a heavy dial stays until the hand is ahead by the drag, and then opens as any other", () => {
    const task = taskOf("dial-heavy", 2.5);
    const lock = new TroubleLock(task, 10);
    lock.turnHandBy(2.4, 0);
    expect(lock.dial).toBe(10);
    lock.turnHandBy(0.6, 1);
    expect(lock.dial).toBeCloseTo(10.5, 9);
    lock.turnHandBy(-4.9, 2);
    expect(lock.dial).toBeCloseTo(10.5, 9);
    lock.turnHandBy(-1.1, 3);
    expect(lock.dial).toBeCloseTo(9.5, 9);
    expect(opens(task, [])).toBe(true);
  });

  test("an encoder whose zero was never set wants every number off, the right one by the lost motion more", () => {
    const task = taskOf("zero-never-set", 2, { profile: ENCODER, combination: [43, 16, 58], lostMotion: 0.5 });
    expect(opens(task, [0, 0, 0])).toBe(false);
    expect(opens(task, [2, 1.5, 2])).toBe(true);
    expect(opens(task, [2, 0.4, 2])).toBe(false);
  });

  test.each([
    { part: "left", off: [0, -1.4, 0] },
    { part: "right", off: [1.4, 0, 1.4] },
  ])("an encoder set from the $part only is true there and off by the lost motion elsewhere", ({ part, off }) => {
    const task = taskOf("zero-one-side", 1.4, { profile: ENCODER, part, combination: [43, 16, 58], lostMotion: 1.4 });
    expect(opens(task, [0, 0, 0])).toBe(false);
    expect(opens(task, off)).toBe(true);
  });

  test("an encoder of short patience forgets what was dialed before the rest", () => {
    const task = taskOf("pause-short", 8, { profile: ENCODER, combination: [43, 16, 58], lostMotion: 0.5 });
    expect([0, 7, 9].map((rest) => opens(task, [], rest))).toEqual([true, true, false]);
  });
});

describe("a last number in the excluded zone", () => {
  const withLast = (last: number, profile = THREE) =>
    taskOf("last-excluded", 1, { profile, combination: [38, 71, last] });

  test("opens all the same where the pins leave the last wheel a whole turn", () => {
    expect([90, 99, 0, 4, 5, 6, 12, 20].map((last) => opens(withLast(last), []))).toEqual(Array(8).fill(true));
  });

  test("brings the draw at once or after a whole turn, as the stop falls on one side of the nose or the other", () => {
    expect(turnsUntilDrop(withLast(6), 0)).toBe(1);
    expect(turnsUntilDrop(withLast(6), -1)).toBe(100);
    expect(turnsUntilDrop(withLast(26), 0)).toBe(21);
  });

  test("is refused by fixed pins just short of the nose: the cam carries the last wheel off before it comes round", () => {
    expect([2, 4, 5, 6].map((last) => opens(withLast(last, FIXED), []))).toEqual([true, false, false, true]);
    expect(turnsUntilDrop(withLast(4, FIXED), 0)).toBeNull();
  });
});

describe("the bench", () => {
  test("an own hand's try says where the index stood at each number, and whether it opened", () => {
    const bench = benchOf(taskOf("gates-tight", 0.3));
    const path = idealMotion(THREE, [38, 71, 26], bench.lock.seen, [0.5, -0.2, 0]);
    path.slice(1).forEach((position, k) => {
      bench.turnBy(position - bench.lock.seen, 1000 * (k + 1));
    });
    const [seen] = bench.log;
    expect(bench.log).toHaveLength(1);
    expect(seen).toMatchObject({ kind: "try", by: "own hand", rest_s: null, opened: false, isTurnedRight: true });
    if (seen?.kind !== "try") throw new Error("a try was expected");
    expect(seen.off.map((one) => Math.round(one * 10) / 10)).toEqual([0.5, 0.2, 0]);
    expect(bench.insides[0]?.errors.map((one) => Math.round(one * 10) / 10)).toEqual([0.5, 0.2, 0]);
  });

  test("a try with a turn too many is told as such", () => {
    const bench = benchOf(taskOf("gates-wide", 3));
    const path = idealMotion(THREE, [38, 71, 26], bench.lock.seen, [0, 100, 0], 10);
    path.slice(1).forEach((position, k) => {
      bench.turnBy(position - bench.lock.seen, 1000 * (k + 1));
    });
    expect(bench.log).toMatchObject([{ kind: "try", isTurnedRight: false, opened: false }]);
  });

  test("the hand can go on after a try, and the next one is logged as well", () => {
    const bench = benchOf(taskOf("gates-wide", 3));
    for (let round = 0; round < 2; round++) {
      const path = idealMotion(THREE, [38, 71, 26], bench.lock.seen, [], 5);
      path.slice(1).forEach((position, k) => {
        bench.turnBy(position - bench.lock.seen, 10_000 * round + 1000 * (k + 1));
      });
    }
    expect(bench.log).toMatchObject([{ opened: true }, { opened: true }]);
  });

  test("where the last try left the dial makes no difference to the steady hand", () => {
    const task = taskOf("zero-never-set", -1.925, { profile: ENCODER, combination: [62, 31, 83], lostMotion: 1.1 });
    const bench = benchOf(task);
    const opened = Array.from({ length: 30 }, (_, k) => {
      bench.dial([-2, 0, -2 - k / 10]);
      return bench.dial([-2, -3.5, -2]).opened;
    });
    expect(opened).toEqual(Array(30).fill(true));
  });

  test("the steady hand dials no number farther off than the bench allows", () => {
    const { off } = benchOf(taskOf("gates-wide", 3)).dial([50, -50, 0]);
    expect(off.map(Math.round)).toEqual([MOST_OFF, -MOST_OFF, 0]);
  });

  test("the same seed gives the same lock, another one another", () => {
    const pool = kindsFor(THREE);
    expect(drawTrouble(THREE, pool, 12)).toEqual(drawTrouble(THREE, pool, 12));
    const drawn = new Set(Array.from({ length: 60 }, (_, seed) => drawTrouble(THREE, pool, seed).trouble.kind));
    expect([...drawn].sort()).toEqual([...pool].sort());
  });

  test("a pool that fits no lock is refused", () => {
    expect(() => drawTrouble(THREE, ["zero-never-set"], 1)).toThrow(TroubleError);
  });
});

test("the cutaway of a debrief shows the gate that is off, and no other", () => {
  const { pack } = dialedInside(taskOf("wheel-off", 3, { part: "2" }));
  expect(pack?.errors().map((error) => Math.round(error * 10) / 10)).toEqual([0, -3, 0]);
  const mended = dialedInside(taskOf("wheel-off", 3, { part: "2" }), [0, 3, 0]);
  expect(mended.pack?.isAligned()).toBe(true);
});
