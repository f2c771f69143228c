import fc from "fast-check";
import { expect, test } from "vitest";
import { inTheTray } from "../../src/fitting/assembly";
import { jointsOf } from "../../src/fitting/fit";
import { numberReads, numberReadsAfterZero } from "../../src/fitting/teaching/numberError";
import type { Turn } from "../../src/lock/dial";
import { type Runout, readsTooMuch } from "../../src/lock/train/runout";
import { ZeroLock } from "../../src/zeroing/zeroLock";
import { after, fitted, goodActs, trainingLock } from "../support/fitter";

const N = 100;
/** Evenly spread, where decimals crowd about 0. */
const hundredths = (min: number, max: number) => fc.integer({ min, max }).map((size) => size / 100);
const decimals = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** What a lock comes to that is fitted in order but for its ring, which is off and turned, and its spindle, which is bent. */
function fitFrom(off_mm: number, turned: number, bend_mm: number) {
  const lock = trainingLock(30);
  const acts = goodActs(lock).map((act) =>
    act.type === "ring.put" ? { ...act, offset: { x_mm: off_mm, y_mm: 0 }, turned } : act,
  );
  const whole = after(inTheTray(lock.sizes.spindle_mm, { x_mm: bend_mm, y_mm: 0.1 * bend_mm }), acts, lock);
  return fitted(whole, lock);
}

const lockFrom = (...offs: Parameters<typeof fitFrom>) => jointsOf(fitFrom(...offs), N);

/** How far off the lock takes a number that the index reads exactly after a turn, its zero learned by a perfect hand. */
function errorAt(joints: ReturnType<typeof lockFrom>, number: number, turn: Turn): number {
  const lock = new ZeroLock({ ...joints, start: 0, noise: 0 }, N);
  lock.counting = { zero: { left: lock.trueZero("left"), right: lock.trueZero("right") }, firstTurn: turn };
  const sign = turn === "left" ? 1 : -1;
  lock.turnBy(sign * 3 * N);
  const isLeft = () => (((sign * (number - lock.seen)) % N) + N) % N;
  // Always a little less than what is left: the dial never comes from the other side.
  for (let step = 0; step < 30 && isLeft() < N - 1e-6; step++) lock.turnBy(sign * isLeft() * 0.98);
  return ((lock.taken - number + N / 2 + 100 * N) % N) - N / 2;
}

test("a zero from both sides takes away where the ring stands and the lost motion, at every number", () => {
  fc.assert(
    fc.property(decimals(-1, 1), decimals(-3, 3), decimals(0, 99), fc.constantFrom("left", "right"), (...asked) => {
      const [off, turned, number, turn] = asked;
      expect(Math.abs(errorAt(lockFrom(off, turned, 0), number, turn))).toBeLessThan(1e-6);
    }),
    { numRuns: 200 },
  );
});

test("it takes nothing away of what goes round with the dial: that is right at zero alone", () => {
  const joints = lockFrom(0, 1, 0.6);
  const runout = joints.runout as Runout;
  expect(runout.size).toBeGreaterThan(0.2);
  const at = (dial: number) => readsTooMuch(runout, dial, N);
  for (const number of [0, 12, 25, 50, 63, 75]) {
    // The ring is turned by one: the index is one left of the dial's own zero.
    const wrong = errorAt(joints, number, "left");
    expect(wrong).toBeCloseTo(at(1) - at(number + 1), 2);
  }
  const worst = Math.max(...Array.from({ length: N }, (_, number) => Math.abs(errorAt(joints, number, "left"))));
  expect(worst).toBeGreaterThan(0.2);
  expect(Math.abs(errorAt(joints, 0, "left"))).toBeLessThan(1e-3);
});

test("what the debrief tells of each number is what the lock makes of it, before its zero is set and after", () => {
  fc.assert(
    fc.property(
      hundredths(-100, 100),
      hundredths(-300, 300),
      hundredths(-70, 70),
      hundredths(0, 9999),
      (ring_mm, turned, bend_mm, number) => {
        const fit = fitFrom(ring_mm, turned, bend_mm);
        // Joints are rounded to hundredths, and the zero takes the dial's place from the error there.
        const off = errorAt(jointsOf(fit, N), number, "left") + numberReadsAfterZero(fit, number, N);
        expect(Math.abs(off)).toBeLessThan(0.03);
        const bare = new ZeroLock({ ...jointsOf(fit, N), lostMotion: 0, drag: 0, start: 0, noise: 0 }, N);
        bare.turnBy(number - numberReads(fit, number, N));
        expect(Math.abs(bare.seen - number)).toBeLessThan(0.03);
      },
    ),
    { numRuns: 100 },
  );
});
