import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BREAKAWAY, DRAG_LAG, dialFeel, FASTEST_RUN_ON, RUN_ON_TIME } from "../../../src/dialing/hand/dialFeel";

interface Move {
  readonly by: number;
  readonly after: number;
}
const anyMove: fc.Arbitrary<Move> = fc.record({
  by: fc.double({ min: -40, max: 40, noNaN: true }).filter((by) => Math.abs(by) > 1e-6),
  after: fc.integer({ min: 0, max: 400 }),
});
const anyMoves = fc.array(anyMove, { minLength: 1, maxLength: 60 });
const NEAR = 1e-9;

describe("a usual dial", () => {
  test("does what the hand does and nothing by itself", () => {
    const feel = dialFeel("usual");
    expect([feel.take(3, 0), feel.runOn(50), feel.take(-0.1, 60)]).toEqual([3, 0, -0.1]);
    expect([feel.isRunningOn, feel.windUp]).toEqual([false, 0]);
  });
});

describe("a heavy dial", () => {
  test("never leads the hand, never lags by more than the breakaway, and moves only the way the hand goes", () => {
    fc.assert(
      fc.property(anyMoves, (moves) => {
        const feel = dialFeel("heavy");
        let [hand, dial, now] = [0, 0, 0];
        for (const { by, after } of moves) {
          now += after;
          hand += by;
          const moved = feel.take(by, now);
          dial += moved;
          expect(moved * by).toBeGreaterThanOrEqual(0);
          expect(Math.abs(moved)).toBeLessThanOrEqual(Math.abs(by) + BREAKAWAY);
          expect(Math.abs(hand - dial)).toBeLessThanOrEqual(BREAKAWAY + NEAR);
          expect(feel.windUp).toBeCloseTo(hand - dial, 9);
          // Where it moved, the hand is ahead, on the side it came from the dial.
          if (moved !== 0) expect((hand - dial) * Math.sign(by)).toBeCloseTo(DRAG_LAG, 9);
          expect(feel.runOn(now + 1000)).toBe(0);
        }
      }),
    );
  });

  test("sticks until the breakaway, slips to the lag, follows, and sticks again after a rest", () => {
    const feel = dialFeel("heavy");
    const nudge = (now: number) => Number(feel.take(0.25, now).toFixed(6));
    expect([0, 10, 20].map(nudge)).toEqual([0, 0, 0]);
    expect(nudge(30)).toBe(0.5);
    expect([40, 50].map(nudge)).toEqual([0.25, 0.25]);
    // From the lag of 0.5: 0.75 still holds, 1.0 does not.
    expect([300, 310].map(nudge)).toEqual([0, 0.5]);
  });

  test("turned back, takes the lag and the breakaway before it follows", () => {
    const feel = dialFeel("heavy");
    feel.take(5, 0);
    expect(feel.take(-(DRAG_LAG + BREAKAWAY), 10)).toBe(0);
    expect(feel.take(-0.25, 20)).toBeCloseTo(-0.25 - BREAKAWAY + DRAG_LAG, 9);
  });
});

describe("a light dial", () => {
  test("runs on the way it was turned, ever slower, and no farther than its speed times the time constant", () => {
    fc.assert(
      fc.property(anyMoves, fc.integer({ min: 1, max: 40 }), (moves, frame) => {
        const feel = dialFeel("light");
        let now = 0;
        let fastest = 0;
        for (const { by, after } of moves) {
          const took = Math.max(1, after);
          now += after;
          feel.runOn(now);
          feel.take(by, now);
          fastest = Math.max(fastest, Math.abs(by) / Math.min(200, took));
        }
        const way = Math.sign(moves.at(-1)?.by ?? 0);
        const most = Math.min(fastest, FASTEST_RUN_ON / 1000) * RUN_ON_TIME;
        let before = Number.POSITIVE_INFINITY;
        let total = 0;
        for (let k = 0; feel.isRunningOn; k++) {
          now += frame;
          const by = feel.runOn(now);
          expect(by * way).toBeGreaterThanOrEqual(0);
          expect(Math.abs(by)).toBeLessThanOrEqual(before + NEAR);
          before = Math.abs(by);
          total += before;
          expect(k).toBeLessThan(3000);
        }
        expect(total).toBeLessThanOrEqual(most + NEAR);
        expect(feel.runOn(now + 10_000)).toBe(0);
      }),
    );
  });

  test("comes to rest at the same place, however often one looks", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 40, noNaN: true }), fc.integer({ min: 1, max: 50 }), (by, frame) => {
        const [seldom, often] = [dialFeel("light"), dialFeel("light")];
        seldom.take(by, 0);
        often.take(by, 0);
        let total = 0;
        for (let now = frame; often.isRunningOn; now += frame) total += often.runOn(now);
        // What is left when nobody sees it move any more is let go.
        expect(Math.abs(total - seldom.runOn(60_000))).toBeLessThan(0.01 + NEAR);
      }),
    );
  });

  test("a steady hand moves it as far as the hand goes: what ran on is caught up, not added", () => {
    const feel = dialFeel("light");
    let dial = 0;
    for (let now = 16; now <= 1600; now += 16) dial += feel.runOn(now) + feel.take(0.8, now);
    expect(dial).toBeCloseTo(80, 6);
    const ran = feel.runOn(10_000);
    expect(ran).toBeGreaterThan(4.5);
    expect(ran).toBeLessThanOrEqual((0.8 / 16) * RUN_ON_TIME + NEAR);
  });

  test("runs on farther after a fast hand than after a slow one, and stands once it is stopped", () => {
    const ranAfter = (by: number) => {
      const feel = dialFeel("light");
      for (let now = 0; now < 320; now += 16) feel.take(by, now);
      return feel.runOn(9000);
    };
    expect(ranAfter(1.6)).toBeGreaterThan(4 * ranAfter(0.16));
    const feel = dialFeel("light");
    feel.take(10, 0);
    feel.halt();
    expect([feel.isRunningOn, feel.runOn(500)]).toEqual([false, 0]);
  });
});
