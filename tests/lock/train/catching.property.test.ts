import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { driven, lagging } from "../../../src/lock/play";
import { type Catching, caught } from "../../../src/lock/train/catching";
import { LockTrain } from "../../../src/lock/train/lockTrain";

const N = 100;
const sixtyFourths = (low: number, high: number) => fc.integer({ min: low * 64, max: high * 64 }).map((n) => n / 64);
const catching: fc.Arbitrary<Catching> = fc.record({
  at: sixtyFourths(0, 100),
  arc: sixtyFourths(0, 60),
  drag: sixtyFourths(0, 4),
});
const drag = sixtyFourths(0, 2);
const place = sixtyFourths(-200, 200);

/** The same friction by many steps of a hair, each by the play operator with the room of where the dial stands then. */
function byHairs(dial: number, hand: number, least: number, spec: Catching): number {
  const sign = hand < dial ? -1 : 1;
  const hair = 1 / 128;
  let at = dial;
  for (;;) {
    const next = at + sign * hair;
    // What counts is the friction of the way ahead, which lies between the two.
    const middle = (at + next) / 2;
    const into = (((middle - spec.at + spec.arc / 2) % N) + N) % N;
    const room = least + (into < spec.arc ? spec.drag : 0);
    if (sign * (hand - at) - room <= 0) return at;
    at = next;
  }
}

describe("a dial that is caught once a turn", () => {
  test("without more friction anywhere it is the play operator", () => {
    fc.assert(
      fc.property(place, place, drag, catching, (dial, hand, least, spec) => {
        const free = { ...spec, drag: 0 };
        expect(caught(dial, hand, least, free, N)).toBe(driven(dial, hand, lagging(least)));
      }),
    );
  });

  test("stands where many steps of a hair bring it", () => {
    fc.assert(
      fc.property(place, sixtyFourths(-150, 150), drag, catching, (dial, by, least, spec) => {
        const ends = caught(dial, dial + by, least, spec, N);
        expect(Math.abs(ends - byHairs(dial, dial + by, least, spec))).toBeLessThanOrEqual(1 / 64);
      }),
      { numRuns: 300 },
    );
  });

  test("comes to an end wherever its edges are, whatever their decimals", () => {
    const any = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
    const spec = fc.record({ at: any(0, 100), arc: any(0, 99.9), drag: any(0, 4) });
    fc.assert(
      fc.property(any(-1e5, 1e5), any(-500, 500), any(0, 2), spec, (dial, by, least, one) => {
        const ends = caught(dial, dial + by, least, one, N);
        expect(Math.abs(dial + by - ends)).toBeLessThanOrEqual(Math.max(Math.abs(by), least + one.drag) + 1e-6);
        const onEdge = one.at + (by < 0 ? -1 : 1) * (one.arc / 2) + 300 * N;
        expect(Number.isFinite(caught(onEdge, onEdge + by, least, one, N))).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });

  test("a turn in two parts ends where the whole does", () => {
    fc.assert(
      fc.property(place, sixtyFourths(0, 120), sixtyFourths(0, 120), fc.boolean(), drag, catching, (...asked) => {
        const [dial, first, second, isLeft, least, spec] = asked;
        const sign = isLeft ? 1 : -1;
        const half = caught(dial, dial + sign * first, least, spec, N);
        const whole = dial + sign * (first + second);
        // Readings are kept to a millionth, and half an arc may have a seventh decimal.
        expect(caught(half, whole, least, spec, N)).toBeCloseTo(caught(dial, whole, least, spec, N), 5);
      }),
      { examples: [[-180.34375, 32.984375, 10.453125, false, 1.625, { at: 77.8125, arc: 0.078125, drag: 0.015625 }]] },
    );
  });

  test("the other way round is its mirror image", () => {
    fc.assert(
      fc.property(place, place, drag, catching, (dial, hand, least, spec) => {
        const mirrored = { ...spec, at: -spec.at };
        expect(caught(-dial, -hand, least, mirrored, N)).toBeCloseTo(-caught(dial, hand, least, spec, N), 9);
      }),
    );
  });

  test("the hand is farther ahead in the arc alone", () => {
    const spec = { indexOffset: 0, lostMotion: 0, start: 0, drag: 0.5, catching: { at: 50, arc: 10, drag: 2 } };
    const train = new LockTrain(spec, N);
    const aheadAt = new Map<number, number>();
    for (let step = 0; step < 1000; step++) {
      train.turnBy(0.1);
      if (step > 10) aheadAt.set(Math.round(train.dial * 10) / 10, train.ahead);
    }
    const inside = [...aheadAt].filter(([dial]) => dial > 45.2 && dial < 54.8).map(([, one]) => one);
    const outside = [...aheadAt].filter(([dial]) => dial < 44.8 || dial > 55.2).map(([, one]) => one);
    expect(inside.length).toBeGreaterThan(80);
    for (const one of inside) expect(one).toBeCloseTo(2.5, 1);
    for (const one of outside) expect(one).toBeCloseTo(0.5, 1);
  });
});
