import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { doorJoints, type Fit, fitOf, jointsOf } from "../../src/fitting/fit";
import { wrap } from "../../src/lock/dial";
import { LockTrain } from "../../src/lock/train/lockTrain";
import { trainingLock, wellFitted } from "../support/fitter";

const N = 100;
const LOCK = trainingLock(40);

/** A well fitted lock with its key in some keyway, its ring turned, its spindle straight. */
function anyFit(keyway: number, turned: number): Fit {
  const good = wellFitted(LOCK);
  if (good.ring === null || good.key === null) throw new Error("not together");
  const fit = fitOf({ ...good, ring: { ...good.ring, turned }, key: { ...good.key, keyway } }, LOCK);
  if (fit === null) throw new Error("not together");
  return fit;
}

const keyway = fc.nat({ max: 3 });
const turned = fc.double({ min: -4, max: 4, noNaN: true });
const moves = fc.array(fc.double({ min: -250, max: 250, noNaN: true }), { minLength: 1, maxLength: 8 });

const trainAt = (spec: Parameters<typeof jointsOf>[0], of: typeof jointsOf) =>
  new LockTrain({ ...of(spec, N), start: 0 }, N);

/** What the index reads for where the cam stands. */
const readsOff = (train: LockTrain) => wrap(train.seen - train.camPosition, N);

describe("the joints of a fit at the door", () => {
  test("read as those of an address do, wherever the hand turns the dial", () => {
    fc.assert(
      fc.property(keyway, turned, moves, (at, off, turns) => {
        const fit = anyFit(at, off);
        const [door, bench] = [trainAt(fit, doorJoints), trainAt(fit, jointsOf)];
        for (const by of turns) {
          door.turnBy(by);
          bench.turnBy(by);
          expect(Math.abs(wrap(readsOff(door) - readsOff(bench), N))).toBeLessThan(0.02);
        }
      }),
    );
  });

  test("a key in another keyway leaves the ring where it is, and no turn of the ring makes up for it", () => {
    for (const at of [1, 2, 3]) {
      const train = trainAt(anyFit(at, 0), doorJoints);
      train.turnBy(30);
      expect(Math.abs(train.indexError)).toBeLessThan(0.1);
      expect(Math.abs(readsOff(train))).toBeGreaterThan(N / 4 - 1);
      train.ringTurn = -train.indexError;
      expect(Math.abs(readsOff(train))).toBeGreaterThan(N / 4 - 1);
    }
  });

  test("the right keyway couples dial and cam in line, lost motion and all", () => {
    const fit = anyFit(0, 0);
    expect(doorJoints(fit, N)).toEqual({ ...jointsOf(fit, N), keyedOff: 0 });
  });
});
