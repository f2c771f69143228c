import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Attempt } from "../../../src/dialing/attempt";
import { idealMotion } from "../../../src/dialing/idealMotion";
import { HeldLock } from "../../../src/handover/holdback/heldLock";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { HeavyDrawTrain } from "../../../src/lock/train/heavyDraw";
import { LockTrain, type TrainSpec } from "../../../src/lock/train/lockTrain";

const PROFILE = shippedProfile("three-wheel");
const NUMBERS = [30, 60, 20];
const { travel } = PROFILE.draw;
const PATH = idealMotion(PROFILE, NUMBERS, 0, [0, 0, 0], 0);

const sixtyFourths = (low: number, high: number) => fc.integer({ min: low * 64, max: high * 64 }).map((n) => n / 64);
const bindings = sixtyFourths(1, 9);
const specs: fc.Arbitrary<TrainSpec> = fc.record({
  indexOffset: fc.constant(0),
  lostMotion: sixtyFourths(0, 1),
  drag: sixtyFourths(0, 1),
  start: fc.constant(0),
});

const lockAt = () => new HeldLock(new Attempt(PROFILE, NUMBERS, { dial: 0 }));

/** Dials the numbers, a hand that goes by the dial; then it draws as far as asked. */
function dialed(train: LockTrain) {
  const lock = lockAt();
  for (const stop of PATH.slice(1, -1)) {
    train.drive(lock, stop - train.dial);
    train.drive(lock, stop - train.dial);
  }
  return lock;
}

/** The last stop of the path is the end of the draw: all up to there, then some. */
const DRAW = (PATH.at(-1) ?? 0) - (PATH.at(-2) ?? 0);

/** How far a hand turns until the bolt is back, in steps of an eighth. */
function turnUntilBack(train: LockTrain, letsGoEvery = Number.POSITIVE_INFINITY): number {
  const lock = dialed(train);
  const step = Math.sign(DRAW) / 8;
  for (let k = 1; k < 2000; k++) {
    train.drive(lock, step);
    if (lock.retraction === 1) return k / 8;
    if (k % letsGoEvery === 0) train.letGo();
  }
  return Number.POSITIVE_INFINITY;
}

describe("a bolt that runs on the edge of its strike", () => {
  test("not at all, and every move does what it does without this joint", () => {
    fc.assert(
      fc.property(specs, fc.array(sixtyFourths(-150, 150), { maxLength: 30 }), (spec, moves) => {
        const [plain, free] = [new LockTrain(spec, 100), new HeavyDrawTrain({ ...spec, binding: 0 }, 100)];
        const [one, other] = [dialed(plain), dialed(free)];
        for (const by of moves) {
          expect(free.drive(other, by)).toEqual(plain.drive(one, by));
          expect([free.dial, free.camPosition, free.ahead]).toEqual([plain.dial, plain.camPosition, plain.ahead]);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("makes a hand turn farther by just what it binds until the bolt is back", () => {
    fc.assert(
      fc.property(specs, bindings, (spec, binding) => {
        const free = turnUntilBack(new LockTrain(spec, 100));
        const heavy = turnUntilBack(new HeavyDrawTrain({ ...spec, binding }, 100));
        expect(Math.abs(heavy - free - binding)).toBeLessThanOrEqual(0.25);
      }),
      { numRuns: 40 },
    );
  });

  test("the more of it, the farther; and a hand that lets go has to take it up again", () => {
    fc.assert(
      fc.property(specs, bindings, bindings, (spec, one, other) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        const turned = (binding: number) => turnUntilBack(new HeavyDrawTrain({ ...spec, binding }, 100));
        expect(turned(more)).toBeGreaterThanOrEqual(turned(less));
        const everyTwelve = turnUntilBack(new HeavyDrawTrain({ ...spec, binding: more }, 100), 96);
        expect(everyTwelve).toBeGreaterThanOrEqual(turned(more));
        if (more > 5) expect(everyTwelve).toBeGreaterThan(turned(more) + 1);
      }),
      { numRuns: 40 },
    );
  });

  test("weighs the same however the draw is cut into moves", () => {
    fc.assert(
      fc.property(specs, bindings, fc.array(sixtyFourths(0, 1), { maxLength: 8 }), (spec, binding, cuts) => {
        const whole = DRAW + Math.sign(DRAW) * 3;
        const at = [0, ...cuts.sort((a, b) => a - b), 1].map((part) => part * whole);
        const [one, other] = [0, 1].map(() => new HeavyDrawTrain({ ...spec, binding }, 100)) as [
          HeavyDrawTrain,
          HeavyDrawTrain,
        ];
        const [atOnce, inParts] = [dialed(one), dialed(other)];
        one.drive(atOnce, whole);
        for (const [k, to] of at.slice(1).entries()) other.drive(inParts, to - (at[k] ?? 0));
        expect(inParts.retraction).toBeCloseTo(atOnce.retraction, 5);
        expect(other.dial).toBeCloseTo(one.dial, 5);
      }),
      { numRuns: 60 },
    );
  });

  test("holds the dial only while the bolt moves: thrown, and the dial is as light as before", () => {
    fc.assert(
      fc.property(specs, bindings, (spec, binding) => {
        const train = new HeavyDrawTrain({ ...spec, binding }, 100);
        const lock = dialed(train);
        train.drive(lock, DRAW + Math.sign(DRAW) * (travel + 20));
        expect(lock.retraction).toBe(1);
        train.drive(lock, -Math.sign(DRAW) * (travel + 2 * binding + 60));
        expect(lock.retraction).toBe(0);
        expect(Math.abs(train.ahead)).toBeLessThanOrEqual((spec.drag ?? 0) + 1e-6);
      }),
      { numRuns: 40 },
    );
  });
});
