import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { TurnCount } from "../../../src/realdial/printed/turnCount";

/** Gives each reading's part of a turn, and takes what is counted. */
function counted(turns: readonly number[], gap_ms: number): { turns: number[]; doubts: number } {
  const count = new TurnCount();
  const taken = turns.map((one, k) => count.take(one - Math.floor(one), k * gap_ms));
  const first = Math.floor(turns[0] as number);
  return { turns: taken.map((one) => one.turns + first), doubts: taken.filter(({ isInDoubt }) => isInDoubt).length };
}

/** A hand's motion: speeds change by at most 25 turns/s each second, at 30 frames a second. */
const motions = fc
  .tuple(
    fc.integer({ min: -500, max: 500 }),
    fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 1, maxLength: 60 }),
  )
  .map(([start, changes]) => {
    let [position, speed] = [start / 100, 0];
    return changes.map((change) => {
      speed = Math.max(-10, Math.min(10, speed + (25 / 30) * (change / 100)));
      position += speed / 30;
      return position;
    });
  });

test("turns of any hand's motion are counted, and none is in doubt", () => {
  fc.assert(
    fc.property(motions, (motion) => {
      const { turns, doubts } = counted(motion, 1000 / 30);
      expect(doubts).toBe(0);
      for (const [k, one] of turns.entries()) expect(one).toBeCloseTo(motion[k] as number, 9);
    }),
  );
});

describe("after a gap", () => {
  const turnedOn = (speed: number, gap_ms: number, then: number) => {
    const count = new TurnCount();
    for (let k = 0; k < 5; k++) count.take((speed * k) / 30, (1000 * k) / 30);
    return count.take((speed * 4) / 30 + then, 4000 / 30 + gap_ms);
  };

  test.each([
    ["a dial at rest, 0.2 s", 0, 200, 0.1],
    ["one that goes on at 2 turns/s, 0.1 s", 2, 100, 0.2],
    ["one that stops at once, 0.1 s", 2, 100, 0],
    ["one at 10 turns/s, one frame lost", 10, 67, 0.67],
  ])("%s: sure", (_, speed, gap_ms, then) => {
    const { turns, isInDoubt } = turnedOn(speed, gap_ms, then);
    expect(isInDoubt).toBe(false);
    expect(turns).toBeCloseTo((speed * 4) / 30 + then, 9);
  });

  test.each([
    ["a dial at rest, 0.4 s", 0, 400, 0],
    ["one at 2 turns/s, 0.25 s", 2, 250, 0.5],
    ["one at 10 turns/s, three frames lost", 10, 133, 1.33],
  ])("%s: in doubt", (_, speed, gap_ms, then) => {
    expect(turnedOn(speed, gap_ms, then).isInDoubt).toBe(true);
  });
});

test("the first reading is never in doubt, and frames of one time do no harm", () => {
  const count = new TurnCount();
  expect(count.expected(0)).toBeNull();
  expect(count.take(0.4, 5)).toEqual({ turns: 0.4, isInDoubt: false });
  expect(count.take(0.4, 5).turns).toBeCloseTo(0.4, 12);
  expect(Number.isFinite(count.speedNow)).toBe(true);
});

/** A count after frames a tenth of a second apart, its dial at these speeds in between, turns a second. */
function turnedAt(...speeds: readonly number[]) {
  const count = new TurnCount();
  let turns = 0;
  count.take(turns, 0);
  for (const [k, speed] of speeds.entries()) {
    turns += speed / 10;
    count.take(turns, 100 * (k + 1));
  }
  return { count, turns, at_ms: 100 * speeds.length };
}

describe("before the next frame", () => {
  test.each([
    ["at rest", [0], 0, 0.004 + 0.075],
    ["turning left", [0.6], 0.06, 0.004 + 0.018 + 0.075],
    ["turning right", [-0.6], -0.06, 0.004 + 0.018 + 0.075],
  ] as const)("a dial %s is expected where its speed leads, within what a hand can change", (_, speeds, on, within) => {
    const { count, turns, at_ms } = turnedAt(...speeds);
    const expected = count.expected(at_ms + 100);
    expect(expected?.turns).toBeCloseTo(turns + on, 9);
    expect(expected?.spread).toBeCloseTo(within, 9);
  });

  test.each([
    ["goes on gaining, where two speeds agree", [1, 1.2], 1.3],
    ["goes on slowing, where they agree", [-1.2, -1], -0.9],
    ["is the slower one, where it grows fast", [0.5, 1.5], 0.5],
    ["is the slower one, where it falls fast", [-1.5, -0.5], -0.5],
    ["is none, where the dial turned back", [1, -1], 0],
    ["is none, where it has just begun", [0, 1], 0],
  ] as const)("its speed %s", (_, speeds, speed) => {
    expect(turnedAt(...speeds).count.speedNow).toBeCloseTo(speed, 9);
  });
});
