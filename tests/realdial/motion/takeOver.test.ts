import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Sighting } from "../../../src/realdial/motion/sighting";
import { TakeOver } from "../../../src/realdial/motion/takeOver";

const seen = (at: number, position: number, turnsInDoubt = false): Sighting => ({
  at,
  position,
  sight: "sure",
  reason: "none",
  turnsInDoubt,
});
const unseen = (at: number): Sighting => ({
  at,
  position: null,
  sight: "no-sight",
  reason: "too-dark",
  turnsInDoubt: false,
});

/** Frames a second apart by 33 ms: positions, or null where nothing is seen. */
function follow(takeOver: TakeOver, from: number, positions: readonly (number | null)[], screen: number) {
  return positions.map((position, k) => {
    const at = from + 33 * k;
    return takeOver.take(position === null ? unseen(at) : seen(at, position), screen);
  });
}

/** A real dial and the one on the screen that it turns. */
class FollowedHand {
  private readonly takeOver = new TakeOver();
  private at = 0;
  private position = 0;
  private screen = 0;
  private told = 0;

  /** @returns how far the screen is from what the dial shows, turns; 0 in a frame that turns nothing */
  turn(by: number, isInDoubt: boolean): number {
    this.at += 100;
    this.position += by;
    const followed = this.takeOver.take(seen(this.at, this.position, isInDoubt), this.screen);
    if (followed.state !== "follows" || followed.turns === null) return 0;
    this.screen += followed.turns - this.told;
    this.told = followed.turns;
    return this.screen - this.position / 100;
  }
}

describe("a dial takes over", () => {
  test("where it shows the number on the screen, whatever its whole turns, and is at it then", () => {
    const told = follow(new TakeOver(), 0, [330, 337, 338.3, 340.3], 5.38);
    expect(told.map(({ state }) => state)).toEqual(["apart", "apart", "follows", "follows"]);
    const turns = told.map((one) => (one.state === "follows" ? one.turns : null));
    // The screen is 0.3 graduations to the right of it there.
    expect(turns[2]).toBeCloseTo(0.003, 9);
    expect(turns[3]).toBeCloseTo(0.023, 9);
  });

  test("where it passes that number between two frames, unless it may have gone the other way", () => {
    const [passed, leapt] = [follow(new TakeOver(), 0, [30, 38], 0.35), follow(new TakeOver(), 0, [20, 60], 0.35)];
    expect(passed.at(-1)).toEqual({ state: "follows", turns: expect.closeTo(0.03, 9), hasComeBack: false });
    expect(leapt.at(-1)).toEqual({ state: "apart" });
  });

  test("goes on after a moment out of sight, and tells of a longer one", () => {
    const takeOver = new TakeOver();
    const states = follow(takeOver, 0, [0, null, null, 4, ...Array(11).fill(null), 4], 0);
    expect(states.map(({ state }) => state)).toEqual([...Array(13).fill("follows"), "lost", "lost", "follows"]);
    expect(states.at(-2)).toEqual({ state: "lost", reason: "too-dark" });
    expect(states.at(-1)).toEqual({ state: "follows", turns: 0.04, hasComeBack: false });
  });

  test("after a doubt, not before it has come to the number on the screen, and says that it has", () => {
    const takeOver = new TakeOver();
    follow(takeOver, 0, [0, 10], 0);
    expect(takeOver.take(seen(100, 260, true), 0.1)).toEqual({ state: "apart" });
    // At once what was told may not have reached the screen.
    expect(takeOver.take(seen(133, 208), 0.1)).toEqual({ state: "apart" });
    expect(takeOver.take(seen(300, 205), 0.1)).toEqual({ state: "apart" });
    expect(takeOver.take(seen(333, 210), 0.1)).toEqual({ state: "follows", turns: 0.1, hasComeBack: true });
  });

  test("never turns the screen away from what the dial shows", () => {
    const frames = fc.array(fc.tuple(fc.double({ min: -30, max: 30, noNaN: true }), fc.integer({ min: 0, max: 9 })), {
      maxLength: 60,
    });
    fc.assert(
      fc.property(frames, (moves) => {
        const hand = new FollowedHand();
        for (const [by, chance] of moves) {
          const off = hand.turn(by, chance === 0);
          // The dead band lets a running dial fall back by 0.4.
          expect(Math.abs(off - Math.round(off))).toBeLessThan(0.0041);
        }
      }),
    );
  });
});

test("a dial on the screen that was moved by something else is met again, and no turn is in doubt by that", () => {
  const takeOver = new TakeOver();
  follow(takeOver, 0, [0, 10], 0);
  takeOver.comeApart();
  expect(takeOver.take(seen(400, 10), 0.3)).toEqual({ state: "apart" });
  expect(takeOver.take(seen(433, 20), 0.3)).toEqual({ state: "apart" });
  expect(takeOver.take(seen(466, 30), 0.3)).toMatchObject({ state: "follows", hasComeBack: false });
});
