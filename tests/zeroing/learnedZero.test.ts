import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Graduations, Turn } from "../../src/lock/dial";
import type { LearnedZero } from "../../src/lock/train/learnedZero";
import { LockTrain } from "../../src/lock/train/lockTrain";
import { learnZero, zeroShare } from "../../src/zeroing/learnedZero";
import { usualRules } from "../../src/zeroing/zeroingRules";
import { EXACT, ZeroBench } from "../support/zeroBench";

const TURNS = ["right", "left"] as const;
const sixtyFourths = (low: number, high: number) => fc.integer({ min: low * 64, max: high * 64 }).map((n) => n / 64);
const hidden = fc.record({
  indexOffset: sixtyFourths(-2, 2),
  lostMotion: sixtyFourths(0, 2),
  noise: fc.constant(0),
  start: sixtyFourths(0, 100),
});

/** Four readings a side, so that their mean does not round; the hand stops off zero by a deviation of each side. */
function calibrated(condition: typeof EXACT, deviations: Readonly<Record<Turn, Graduations>>) {
  const bench = new ZeroBench({ ...usualRules(100), wanted: 4 }, condition);
  bench.make({ type: "ring.clamped" });
  for (let k = 0; k < 8; k++) {
    bench.turnOnto(bench.asked, deviations[bench.asked]);
    bench.read();
  }
  expect(bench.state.value).toBe("zeroSet");
  return { bench, zero: learnZero(bench.state.context.accepted) };
}

test("a perfect hand sets a zero without error, whatever index and play", () => {
  fc.assert(
    fc.property(hidden, (condition) => {
      const { bench, zero } = calibrated(condition, { right: 0, left: 0 });
      for (const turn of TURNS) expect(zeroShare(bench.lock, zero, turn)).toBe(0);
    }),
  );
});

test("a zero learned from a hand that leans shows its lean the other way in every stop", () => {
  const lean = sixtyFourths(-1, 1);
  fc.assert(
    fc.property(hidden, lean, (condition, b) => {
      // A lean of b along the turn is a deviation of b to the left turning left, and to the right turning right.
      const { bench, zero } = calibrated(condition, { right: -b, left: b });
      for (const turn of TURNS) expect(zeroShare(bench.lock, zero, turn)).toBe(0 - b);
    }),
  );
});

test("a lock with one zero for both sides has the lost motion as its error from the other", () => {
  fc.assert(
    fc.property(hidden, (condition) => {
      const { bench, zero } = calibrated(condition, { right: 0, left: 0 });
      const fromTheRight: LearnedZero = { right: zero.right, left: zero.right };
      const fromTheLeft: LearnedZero = { right: zero.left, left: zero.left };
      expect(zeroShare(bench.lock, fromTheRight, "right")).toBe(0);
      expect(zeroShare(bench.lock, fromTheRight, "left")).toBe(0 - condition.lostMotion);
      expect(zeroShare(bench.lock, fromTheLeft, "right")).toBe(0 - condition.lostMotion);
    }),
  );
});

test("a ring that is straightened after the zero was set makes every stop wrong by as much", () => {
  const { bench, zero } = calibrated(EXACT, { right: 0, left: 0 });
  const askew = bench.lock.indexError;
  bench.lock.ringTurn -= askew;
  expect(bench.lock.indexError).toBe(0);
  expect(zeroShare(bench.lock, zero, "left")).toBe(-askew);
  expect(zeroShare(bench.lock, zero, "right")).toBe(askew);
});

describe("a lock that goes by its cam", () => {
  test("counts from the zero of its own direction", () => {
    const lock = new LockTrain({ indexOffset: 0, lostMotion: 0, start: 31 }, 100);
    lock.counting = { zero: { right: 1.25, left: 0.75 }, firstTurn: "right" };
    expect(lock.taken).toBe(29.75);
    lock.turnBy(0.25);
    expect(lock.taken).toBe(30.5);
    lock.turnBy(-0.25);
    expect(lock.taken).toBe(29.75);
  });

  const takenBy = (bench: ZeroBench, zero: LearnedZero) => {
    bench.lock.counting = { zero, firstTurn: "left" };
    return bench.lock.taken;
  };

  test("sees nothing of a hand that trembles within the play", () => {
    const { bench, zero } = calibrated({ ...EXACT, lostMotion: 1.5 }, { right: 0, left: 0 });
    bench.turnOnto("right", 30);
    const seen = takenBy(bench, zero);
    for (const by of [0.25, 1.25, -1.5]) {
      bench.turn(by);
      expect(takenBy(bench, zero)).toBe(seen);
    }
  });

  test("sees a hand that turns about where the dial is, once the play is taken up", () => {
    const { bench, zero } = calibrated({ ...EXACT, lostMotion: 1.5 }, { right: 0, left: 0 });
    bench.turnOnto("right", 30);
    expect(takenBy(bench, zero)).toBe(bench.lock.seen);
    bench.turn(4);
    expect(takenBy(bench, zero)).toBe(bench.lock.seen);
    bench.turn(-4);
    expect(takenBy(bench, zero)).toBe(bench.lock.seen);
  });
});

test("nothing is learned from a side that was not read", () => {
  const reading = { deviation: 0, cam: 0 };
  expect(() => learnZero({ right: [reading], left: [] })).toThrow(expect.objectContaining({ code: "empty-sample" }));
});
