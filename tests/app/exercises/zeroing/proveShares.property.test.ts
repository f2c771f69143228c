import fc from "fast-check";
import { expect, test } from "vitest";
import { ProveSession } from "../../../../src/app/exercises/zeroing/session/proveSession";
import { stopError } from "../../../../src/dialing/runs";
import { signOf } from "../../../../src/lock/dial";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { ZeroLock } from "../../../../src/zeroing/zeroLock";

const PROFILE = shippedProfile("dial-encoder");
const N = PROFILE.graduations;
const sizes = (most: number) => fc.double({ min: -most, max: most, noNaN: true });

test("what a stop is off is the zero's, the fit's and the hand's, and the hand's is what its index showed", () => {
  const fits = fc.record({
    size: fc.double({ min: 0, max: 1, noNaN: true }),
    at: fc.double({ min: 0, max: N, noNaN: true }),
  });
  fc.assert(
    fc.property(fits, sizes(0.4), sizes(0.4), sizes(0.8), (runout, left, right, offBy) => {
      const condition = { indexOffset: 1, lostMotion: 0.6, noise: 0, start: 0.3, runout };
      const lock = new ZeroLock(condition, N);
      const zero = { left: lock.trueZero("left") + left, right: lock.trueZero("right") + right };
      const combination = PROFILE.asSet ?? [];
      const prove = new ProveSession({ lock, zero, profile: PROFILE, combination });
      const seen: number[] = [];
      let now = 0;
      const turn = (by: number) => {
        now += 100;
        prove.turnBy(by, now);
      };
      PROFILE.procedure.forEach(({ turn: way }, k) => {
        const number = combination[k] ?? 0;
        const sign = signOf(way);
        for (let third = 0; third < 9; third++) turn((sign * N) / 3);
        // Little by little, until the index shows the number or what the hand stops off it.
        const left = () => (((sign * (number + sign * offBy - lock.seen)) % N) + N) % N;
        for (let step = 0; step < 40 && left() > 1e-9 && left() < N - 1e-6; step++) turn(sign * left() * 0.98);
        seen.push(stopError(way, lock.seen, number, N));
      });
      turn(-signOf(PROFILE.procedure.at(-1)?.turn ?? "left") * 5);
      const shares = prove.shares();
      expect(shares.length).toBe(combination.length);
      shares.forEach(({ total, fromZero, fromFit, fromHand }, k) => {
        expect(fromHand).toBeCloseTo(seen[k] ?? Number.NaN, 4);
        expect(fromZero + fromFit + fromHand).toBeCloseTo(total, 9);
        expect(Math.abs(fromFit)).toBeLessThanOrEqual(2 * runout.size + 1e-9);
      });
    }),
    { numRuns: 60 },
  );
});
