import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { signOf, type Turn } from "../../src/lock/dial";
import { markPlay, type PlayStops, playEstimate } from "../../src/zeroing/playEstimate";
import { ZeroLock } from "../../src/zeroing/zeroLock";
import { lostMotionEstimate } from "../../src/zeroing/zeroResult";

const sixtyFourths = (low: number, high: number) => fc.integer({ min: low * 64, max: high * 64 }).map((n) => n / 64);

/** Brings the mark on the cam to its line from a third of a turn away, and reads the dial. */
function stoppedOnMark(lock: ZeroLock, turn: Turn): number {
  const sign = signOf(turn);
  lock.turnBy(-sign * 40);
  // Away from the line the play is taken up; what the cam then lacks, the dial must turn, and the play besides.
  const lacks = sign * -lock.camDeviation;
  lock.turnBy(sign * (lacks + lock.condition.lostMotion));
  return lock.seen;
}

test("a hand that stops when the cam's mark is on its line finds the play of the lock", () => {
  const hidden = fc.record({
    indexOffset: sixtyFourths(-2, 2),
    lostMotion: sixtyFourths(0, 2),
    noise: fc.constant(0),
    start: sixtyFourths(-9, 9),
  });
  fc.assert(
    fc.property(hidden, (condition) => {
      const lock = new ZeroLock(condition, 100);
      lock.turnBy(60);
      lock.turnBy(-60);
      const stops: PlayStops = {
        right: [stoppedOnMark(lock, "right"), stoppedOnMark(lock, "right")],
        left: [stoppedOnMark(lock, "left"), stoppedOnMark(lock, "left")],
      };
      expect(lock.camDeviation).toBe(0);
      expect(playEstimate(stops, 100).estimate).toBe(condition.lostMotion);
    }),
  );
});

test("the quick way finds it as well: take up the play, then turn about until the cam just moves", () => {
  const lock = new ZeroLock({ indexOffset: 0.5, lostMotion: 0.75, noise: 0, start: 3 }, 100);
  lock.turnBy(-20);
  const right = lock.seen;
  const cam = lock.camDeviation;
  lock.turnBy(0.75);
  expect(lock.camDeviation).toBe(cam);
  const left = lock.seen;
  lock.turnBy(0.015625);
  expect(lock.camDeviation).toBeGreaterThan(cam);
  expect(playEstimate({ right: [right, right], left: [left, left] }, 100).estimate).toBe(0.75);
});

describe("an estimate", () => {
  const stop = sixtyFourths(-3, 3);
  const side = fc.array(stop, { minLength: 2, maxLength: 6 });

  test("does not mind where on the dial the mark is, nor how many turns were made", () => {
    fc.assert(
      fc.property(side, side, sixtyFourths(-300, 300), fc.integer({ min: -5, max: 5 }), (right, left, at, turns) => {
        const was = playEstimate({ right, left }, 100);
        const moved = (stops: readonly number[], by: number) => stops.map((one) => one + by);
        const is = playEstimate({ right: moved(right, at), left: moved(left, at + 100 * turns) }, 100);
        expect(is.estimate).toBeCloseTo(was.estimate, 9);
        expect(is.ci95.low).toBeCloseTo(was.ci95.low, 9);
      }),
    );
  });

  test("is the lost motion of the same readings, the sides exchanged", () => {
    fc.assert(
      fc.property(side, side, (right, left) => {
        const play = playEstimate({ right, left }, 100);
        const motion = lostMotionEstimate({ right: left, left: right });
        expect(play.estimate).toBeCloseTo(motion.estimate, 9);
        expect(play.ci95.high).toBeCloseTo(motion.ci95.high, 9);
      }),
    );
  });

  test("needs two stops from each side", () => {
    expect(() => playEstimate({ right: [1], left: [2, 2] }, 100)).toThrow(
      expect.objectContaining({ code: "too-few-values" }),
    );
    expect(() => playEstimate({ right: [], left: [2, 2] }, 100)).toThrow(
      expect.objectContaining({ code: "empty-sample" }),
    );
  });
});

describe("the trainee's own number", () => {
  const stops = { right: [99.9, 0.1, 0], left: [0.9, 1.1, 1] };
  test.each([
    { why: "right", answer: 1, truth: 1, error: 0, own: true, true: true },
    { why: "too much, but what his stops say", answer: 1.1, truth: 1, error: 0.1, own: true, true: true },
    { why: "not what his stops say", answer: 0.5, truth: 1, error: -0.5, own: false, true: true },
    { why: "what his stops say, and they are wrong", answer: 1, truth: 1.6, error: -0.6, own: true, true: false },
  ])("$why", ({ answer, truth, error, own, true: isTruthInside }) => {
    const mark = markPlay(stops, 100, answer, truth);
    expect(mark).toMatchObject({ answer, truth, isAnswerInside: own, isTruthInside });
    expect(mark.error).toBeCloseTo(error, 12);
    expect(mark.estimate).toBeCloseTo(1, 12);
  });

  test("is inside where all stops are alike, whatever rounding does", () => {
    const alike = { right: [0.1, 0.1], left: [0.9, 0.9] };
    expect(markPlay(alike, 100, 0.8, 0.8)).toMatchObject({ isAnswerInside: true, isTruthInside: true });
  });
});
