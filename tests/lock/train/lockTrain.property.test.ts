import fc from "fast-check";
import { expect, test } from "vitest";
import { LockTrain, type TrainEnd } from "../../../src/lock/train/lockTrain";

const sixtyFourths = (low: number, high: number) => fc.integer({ min: low * 64, max: high * 64 }).map((n) => n / 64);
const spec = fc.record({
  indexOffset: sixtyFourths(-2, 2),
  lostMotion: sixtyFourths(0, 2),
  drag: sixtyFourths(0, 2),
  start: sixtyFourths(0, 100),
});
const moves = fc.array(sixtyFourths(-30, 30), { maxLength: 30 });

/** An end with a stop on either side. */
class Stopped implements TrainEnd<number> {
  dial: number;
  private readonly reach: number;

  constructor(dial: number, reach: number) {
    this.dial = dial;
    this.reach = reach;
  }

  turnBy(by: number): readonly number[] {
    const before = this.dial;
    this.dial = Math.min(this.reach, Math.max(-this.reach, this.dial + by));
    return this.dial === before ? [] : [this.dial];
  }
}

test("no part is ever further from the one that drives it than its joint lets it", () => {
  fc.assert(
    fc.property(spec, moves, (sizes, hand) => {
      const train = new LockTrain(sizes, 100);
      for (const by of hand) {
        train.turnBy(by);
        expect(Math.abs(train.ahead)).toBeLessThanOrEqual(sizes.drag);
        const behind = train.camPosition - train.dial;
        expect(behind >= 0 && behind <= sizes.lostMotion).toBe(true);
        expect(train.seen).toBe(train.dial - sizes.indexOffset);
      }
    }),
  );
});

test("what stands at the end is always where the train takes it to be, and a stop there holds the dial", () => {
  fc.assert(
    fc.property(spec, sixtyFourths(-3, 3), sixtyFourths(-3, 3), moves, (sizes, right, left, hand) => {
      const train = new LockTrain(sizes, 100);
      train.counting = { zero: { right, left }, firstTurn: "left" };
      const end = new Stopped(train.taken, 120);
      for (const by of hand) {
        train.drive(end, by);
        expect(train.taken).toBe(end.dial);
        expect(Math.abs(train.dial)).toBeLessThanOrEqual(120 + 2 + 3);
      }
    }),
  );
});

test("a hand that friction holds moves nothing at the end", () => {
  const train = new LockTrain({ indexOffset: 0, lostMotion: 0, drag: 1, start: 0 }, 100);
  const end = new Stopped(0, 100);
  expect([train.drive(end, 0.75), train.drive(end, 0.5), end.dial]).toEqual([[], [0.25], 0.25]);
  train.letGo();
  expect([train.ahead, train.drive(end, 1), end.dial]).toEqual([0, [], 0.25]);
});

test("a copy goes its own way", () => {
  const train = new LockTrain({ indexOffset: 1, lostMotion: 0.5, start: 4 }, 100);
  train.turnBy(-3);
  const copy = train.copy();
  copy.turnBy(10);
  expect([train.dial, train.camPosition, train.camTurn]).toEqual([1, 1.5, "right"]);
  expect([copy.dial, copy.camPosition, copy.camTurn, copy.seen]).toEqual([11, 11, "left", 10]);
});
