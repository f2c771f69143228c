import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Attempt } from "../../src/dialing/attempt";
import { idealMotion } from "../../src/dialing/idealMotion";
import { beginChange } from "../../src/handover/change/change";
import { KeyedPack } from "../../src/handover/change/keyedPack";
import { HeldLock } from "../../src/handover/holdback/heldLock";
import type { Graduations } from "../../src/lock/dial";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { LockTrain, type TrainEnd } from "../../src/lock/train/lockTrain";
import { KEYED } from "./change/changeHands";

const three = KEYED.find(({ id }) => id === "three-wheel");
if (three === undefined) throw new TypeError("no three-wheel pack is shipped");
const encoder = shippedProfile("dial-encoder");
const numbers = three.asSet ?? [];
const ENCODER_NUMBERS = encoder.asSet ?? [];

/** A lock that a perfect hand has opened. */
function opened(): Attempt {
  const attempt = new Attempt(shippedProfile("three-wheel"), numbers, { dial: 0 });
  for (const stop of idealMotion(attempt.profile, numbers, 0).slice(1)) attempt.turnBy(stop - attempt.dial);
  return attempt;
}

/** Everything that can stand at the end of a train, in every state in which it holds something back or nothing. */
const ENDS: Readonly<Record<string, () => TrainEnd<unknown>>> = {
  "a pack": () => new Attempt(three, numbers, { dial: 0 }),
  "a pack at its positive stop": opened,
  "an encoder": () => new Attempt(encoder, ENCODER_NUMBERS, { dial: 0 }),
  "a lock that could be held back": () => new HeldLock(opened()),
  "a lock held back": () => {
    const held = new HeldLock(opened());
    held.setHoldback();
    return held;
  },
  "a pack without its key": () => new KeyedPack(three, numbers),
  "a pack with its key in": () => {
    const keyed = new KeyedPack(three, numbers);
    keyed.insertKey();
    return keyed;
  },
  "a change with a key": () =>
    beginChange(three, numbers, [10, 60, 30], { dial: 0, slack: three.wheelPack.freePlay.map(() => 0) }),
  "a change with the key in": () => {
    const change = beginChange(three, numbers, [10, 60, 30], { dial: 0, slack: three.wheelPack.freePlay.map(() => 0) });
    change.act("insertKey");
    return change;
  },
  "a change on the dial": () => beginChange(encoder, ENCODER_NUMBERS, [10, 60, 30], { dial: 0 }),
};

const move = fc.integer({ min: -300 * 64, max: 300 * 64 }).map((n) => n / 64);
const moves = fc.array(move, { maxLength: 8 });
const near = (value: Graduations) => expect.closeTo(value, 6);

describe.each(Object.entries(ENDS))("%s", (_, make) => {
  test("goes no farther than it is moved, and the same way", () => {
    fc.assert(
      fc.property(moves, (each) => {
        const end = make();
        for (const by of each) {
          const before = end.dial;
          end.turnBy(by);
          const went = end.dial - before;
          expect(went * Math.sign(by)).toBeGreaterThanOrEqual(-1e-9);
          expect(Math.abs(went)).toBeLessThanOrEqual(Math.abs(by) + 1e-9);
        }
      }),
      { numRuns: 40 },
    );
  });

  test("comes to the same place where the hand stops on the way", () => {
    fc.assert(
      fc.property(moves, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (each, part) => {
        const [one, other] = [make(), make()];
        for (const by of each) {
          const first = Math.round(by * part * 64) / 64;
          one.turnBy(by);
          other.turnBy(first);
          other.turnBy(by - first);
        }
        expect(other.dial).toEqual(near(one.dial));
      }),
      { numRuns: 40 },
    );
  });

  test("holds the whole train before it back: dial and cam go no farther than it lets them", () => {
    fc.assert(
      fc.property(moves, fc.constantFrom(0, 1.5), (each, lostMotion) => {
        const end = make();
        const train = new LockTrain({ indexOffset: 0, lostMotion, start: end.dial }, 100);
        for (const by of each) {
          train.drive(end, by);
          expect(train.taken).toEqual(near(end.dial));
          expect(train.camPosition - train.dial).toBeGreaterThanOrEqual(-1e-9);
          expect(train.camPosition - train.dial).toBeLessThanOrEqual(lostMotion + 1e-9);
        }
      }),
      { numRuns: 40 },
    );
  });
});
