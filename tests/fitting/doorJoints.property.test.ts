import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { doorJoints, type Fit, fitOf, jointsOf } from "../../src/fitting/fit";
import { CENTERED, faceOf, type Offset, readingError } from "../../src/fitting/offCenter";
import { wrap } from "../../src/lock/dial";
import { LockTrain } from "../../src/lock/train/lockTrain";
import { trainingLock, wellFitted } from "../support/fitter";

const N = 100;
const LOCK = trainingLock(40);

/** A well fitted lock with its key in some keyway, its ring turned, its spindle bent where a bend is given. */
function anyFit(keyway: number, turned: number, bend: Offset = CENTERED): Fit {
  const good = wellFitted(LOCK);
  if (good.ring === null || good.key === null) throw new Error("not together");
  const fit = fitOf(
    { ...good, ring: { ...good.ring, turned }, key: { ...good.key, keyway }, spindle: { ...good.spindle, bend } },
    LOCK,
  );
  if (fit === null) throw new Error("not together");
  return fit;
}

const keyway = fc.nat({ max: 3 });
const turned = fc.double({ min: -4, max: 4, noNaN: true });
const bent = fc.record({
  x_mm: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
  y_mm: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
});
const moves = fc.array(fc.double({ min: -250, max: 250, noNaN: true }), { minLength: 1, maxLength: 8 });

/** With its dial at zero; the train of an address starts from the cam, which the key holds farther on. */
const trainAt = (fit: Fit, of: typeof jointsOf) =>
  new LockTrain({ ...of(fit, N), start: of === doorJoints ? 0 : fit.numbersOff }, N);

/** What the index reads for where the cam stands. */
const readsOff = (train: LockTrain) => wrap(train.seen - train.camPosition, N);

describe("the joints of a fit at the door", () => {
  test("read as those of an address do, wherever the hand turns the dial", () => {
    fc.assert(
      fc.property(keyway, turned, bent, moves, (at, off, bend, turns) => {
        const fit = anyFit(at, off, bend);
        const [door, bench] = [trainAt(fit, doorJoints), trainAt(fit, jointsOf)];
        for (const by of turns) {
          door.turnBy(by);
          bench.turnBy(by);
          expect(Math.abs(wrap(readsOff(door) - readsOff(bench), N))).toBeLessThan(0.03);
        }
      }),
    );
  });

  test.each([
    ["an address", jointsOf],
    ["the door", doorJoints],
  ] as const)("of %s: a bent spindle runs out with its dial, as the exact geometry says", (_, of) => {
    fc.assert(
      fc.property(keyway, bent, moves, (at, bend, turns) => {
        const [fit, straight] = [anyFit(at, 0, bend), anyFit(at, 0)];
        const face = faceOf(N, LOCK.sizes.markRadius_mm, null, bend);
        const [train, plain] = [trainAt(fit, of), trainAt(straight, of)];
        const fromCam = of === doorJoints ? 0 : fit.numbersOff;
        for (const by of turns) {
          train.turnBy(by);
          plain.turnBy(by);
          const exact = readingError(face, 0, train.dial - fromCam);
          expect(Math.abs(wrap(train.seen - plain.seen, N) - exact)).toBeLessThan(0.03);
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
