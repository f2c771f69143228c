import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Attempt } from "../../src/dialing/attempt";
import { idealMotion } from "../../src/dialing/idealMotion";
import { TRAINING_SIZES } from "../../src/fitting/fittingSizes";
import { afterUse, SPANS, takesOf, turnsIn } from "../../src/fitting/teaching/afterUse";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { LockTrain } from "../../src/lock/train/lockTrain";

const PROFILE = shippedProfile("three-wheel");
const fits = fc.record({
  lostMotion: fc.double({ min: 0, max: 1, noNaN: true }),
  playGrows: fc.double({ min: 0, max: 5, noNaN: true }),
});

describe("a lock after some use", () => {
  test("is as fitted where nothing grows, and grows straight to the most else", () => {
    fc.assert(
      fc.property(fits, (fit) => {
        const plays = SPANS.map((span) => afterUse(fit, TRAINING_SIZES, PROFILE, span).play);
        expect([...plays].sort((a, b) => a - b)).toEqual(plays);
        const asFitted = afterUse({ ...fit, playGrows: 0 }, TRAINING_SIZES, PROFILE, "year");
        expect(asFitted.play).toBe(fit.lostMotion);
        for (const [k, span] of SPANS.entries()) {
          const straight = fit.lostMotion + (fit.playGrows * turnsIn(span)) / 1000;
          expect(plays[k]).toBeCloseTo(Math.min(straight, TRAINING_SIZES.playMost), 9);
        }
      }),
    );
  });

  test("by hand: ten openings of fourteen turns on 21 days are 2,940 turns, 3.53 graduations more", () => {
    const used = afterUse({ lostMotion: 0.25, playGrows: 1.2 }, TRAINING_SIZES, PROFILE, "month");
    expect(used).toEqual({ turns: 2940, play: expect.closeTo(3.778, 9), opens: false });
  });

  test("opens by its numbers exactly while the lock under a faultless hand does", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 300 }), (hundredths) => {
        const play = hundredths / 100;
        const { opens } = afterUse({ lostMotion: play, playGrows: 0 }, TRAINING_SIZES, PROFILE, "week");
        const train = new LockTrain({ indexOffset: 0, lostMotion: play, start: 0 }, 100);
        const lock = new Attempt(PROFILE, [30, 60, 20], { dial: 0 });
        const path = idealMotion(PROFILE, [30, 60, 20], 0, [0, 0, 0], 20);
        for (const stop of path.slice(1)) train.drive(lock, stop - train.dial);
        expect(lock.opened).toBe(opens);
      }),
    );
    expect(takesOf(PROFILE)).toBe(1.25);
  });
});
