import { expect, test } from "vitest";
import { CENTERED, firstOrderError, readingError } from "../../../src/fitting/offCenter";
import { LockTrain } from "../../../src/lock/train/lockTrain";
import { readsTooMuch } from "../../../src/lock/train/runout";

const N = 100;
const RADIUS_mm = 40;

/** A dial 0.6 mm right of its axis with zero at the top: 0.6/40 of a radian, and none where it has gone a quarter round. */
const face = { perTurn: N, radius_mm: RADIUS_mm, ring: CENTERED, dial: { x_mm: 0.6, y_mm: 0 } };
const runout = { size: (0.6 / RADIUS_mm) * (N / (2 * Math.PI)), at: 25 };

test("a dial off its axis reads as the geometry of two circles says", () => {
  for (let dial = -150; dial <= 150; dial += 7) {
    expect(readsTooMuch(runout, dial, N)).toBeCloseTo(firstOrderError(face, 0, dial), 12);
    // The exact error differs by the square of 0.6/40, in graduations.
    expect(Math.abs(readsTooMuch(runout, dial, N) - readingError(face, 0, dial))).toBeLessThan(0.002);
  }
});

test("no turn of the ring takes the error away everywhere: what goes round is what is left", () => {
  const train = new LockTrain({ indexOffset: 0.4, lostMotion: 0, start: 0, runout: { size: 0.3, at: 0 } }, N);
  train.ringTurn = -0.4;
  const errors = [0, 25, 50, 75].map((dial) => train.indexErrorAt(dial));
  for (const [k, left] of [0, -0.3, 0, 0.3].entries()) expect(errors[k]).toBeCloseTo(left, 12);
  expect(train.seen).toBe(0);
});
