import { describe, expect, test } from "vitest";
import type { Graduations, Milliseconds } from "../../src/lock/dial";
import { Approach, type ApproachFacts, judgeReading, REFUSALS } from "../../src/zeroing/approach";
import { usualRules } from "../../src/zeroing/zeroingRules";

const RULES = usualRules(100);
const GOOD: ApproachFacts = { turn: "right", length: 25, lengthBefore: 0, rest_ms: 400, isSameStop: false };

const JUDGED = [
  { why: "all at its limit", facts: {}, deviation: 1.5, reason: null },
  { why: "and to the right of zero", facts: {}, deviation: -1.5, reason: null },
  { why: "a rest that is a millisecond short", facts: { rest_ms: 399 }, deviation: 0, reason: "not-at-rest" },
  {
    why: "a moving dial, whatever else is wrong",
    facts: { rest_ms: 0, turn: null },
    deviation: 9,
    reason: "not-at-rest",
  },
  { why: "a stop that has been read", facts: { isSameStop: true, length: 0 }, deviation: 0, reason: "same-stop" },
  { why: "no motion at all", facts: { turn: null, length: 0 }, deviation: 0, reason: "too-short" },
  { why: "an approach a hair too short", facts: { length: 24.99 }, deviation: 0, reason: "too-short" },
  {
    why: "a short one after a long turn the other way",
    facts: { length: 9, lengthBefore: 25 },
    deviation: 0,
    reason: "too-short",
  },
  {
    why: "a short one after a short one",
    facts: { length: 9, lengthBefore: 24.99 },
    deviation: 0,
    reason: "came-back",
  },
  { why: "a long turn the wrong way", facts: { turn: "left", lengthBefore: 60 }, deviation: 0, reason: "wrong-way" },
  {
    why: "a short turn the wrong way, the first",
    facts: { turn: "left", length: 3 },
    deviation: 0,
    reason: "wrong-way",
  },
  { why: "a short way back", facts: { turn: "left", length: 2, lengthBefore: 60 }, deviation: 0, reason: "came-back" },
  { why: "a stop a hair too far off", facts: {}, deviation: 1.51, reason: "off-the-mark" },
  { why: "a stop that is nowhere", facts: {}, deviation: Number.NaN, reason: "off-the-mark" },
  { why: "a short approach that is off as well", facts: { length: 3 }, deviation: 9, reason: "too-short" },
] as const;

describe("a reading", () => {
  test.each(JUDGED)("$why: $reason", ({ facts, deviation, reason }) => {
    expect(judgeReading("right", { ...GOOD, ...facts }, deviation, RULES)).toBe(reason);
  });

  test.each(JUDGED)("mirrored, $why: $reason", ({ facts, deviation, reason }) => {
    const both: ApproachFacts = { ...GOOD, ...facts };
    const turn = both.turn === null ? null : both.turn === "right" ? "left" : "right";
    expect(judgeReading("left", { ...both, turn }, -deviation, RULES)).toBe(reason);
  });

  test("has every reason of the list in this table", () => {
    expect([...new Set(JUDGED.flatMap(({ reason }) => reason ?? []))].sort()).toEqual([...REFUSALS].sort());
  });
});

/** Moves a dial from 0 to positions, 100 ms each. */
function approached(positions: readonly Graduations[], rest_ms: Milliseconds): ApproachFacts {
  const approach = new Approach(0);
  for (const [k, position] of positions.entries()) approach.moveTo(position, 100 * k);
  return approach.facts(100 * (positions.length - 1) + rest_ms);
}

describe("what the hand did", () => {
  test.each([
    { why: "one turn", to: [-30], facts: { turn: "right", length: 30, lengthBefore: 0 } },
    { why: "in many steps", to: [-1, -9, -9, -30], facts: { turn: "right", length: 30, lengthBefore: 0 } },
    { why: "there and back", to: [20, -10], facts: { turn: "right", length: 30, lengthBefore: 20 } },
    {
      why: "a tremble on the way is none",
      to: [-10, -9.875, -30],
      facts: { turn: "right", length: 30, lengthBefore: 0 },
    },
    { why: "a tremble at the end is none", to: [-30, -29.875], facts: { turn: "right", length: 30, lengthBefore: 0 } },
    { why: "more than a tremble", to: [-30, -29.75], facts: { turn: "left", length: 0.25, lengthBefore: 30 } },
    { why: "trembling back bit by bit", to: [-30, -29.9, -29.8], facts: { turn: "left", lengthBefore: 30 } },
    { why: "a tremble before the turn was no motion", to: [0.125, -10], facts: { turn: "right", lengthBefore: 0 } },
    { why: "nothing", to: [0], facts: { turn: null, length: 0, lengthBefore: 0, rest_ms: Number.POSITIVE_INFINITY } },
  ])("$why", ({ to, facts }) => {
    expect(approached(to, 500)).toMatchObject(facts);
  });
});

describe("rest", () => {
  test("begins with the last motion", () => {
    expect(approached([-10, -30], 350).rest_ms).toBe(350);
  });

  test("is not disturbed by the same position, nor by a hair", () => {
    expect(approached([-30, -30, -30.03125, -30], 50).rest_ms).toBe(350);
  });

  test("does not begin while the dial creeps", () => {
    expect(approached([-30, -30.04, -30.08, -30.12], 50).rest_ms).toBe(150);
    expect(approached([-30, -30.04, -30.08, -30.12, -30.16, -30.2], 50).rest_ms).toBeLessThan(200);
  });
});

describe("a stop that was read", () => {
  const readAfter = (to: readonly Graduations[]) => {
    const approach = new Approach(0);
    approach.moveTo(-30, 0);
    approach.readingTaken();
    for (const [k, position] of to.entries()) approach.moveTo(position, 1000 + k);
    return approach.facts(9000);
  };

  test.each([
    { why: "is the same until it is left", to: [], facts: { isSameStop: true, length: 0 } },
    { why: "is the same after a tremble", to: [-30.125], facts: { isSameStop: true } },
    { why: "is another once left", to: [-30.25], facts: { isSameStop: false, length: 0.25 } },
    { why: "is another even if come back to", to: [-31, -30], facts: { isSameStop: false } },
    {
      why: "costs another turn: only what follows counts",
      to: [-50],
      facts: { turn: "right", length: 20, lengthBefore: 0 },
    },
    { why: "is whole again after a full one", to: [-130], facts: { turn: "right", length: 100 } },
    { why: "can be come back from", to: [-28], facts: { turn: "left", length: 2, lengthBefore: 30 } },
  ])("$why", ({ to, facts }) => {
    expect(readAfter(to)).toMatchObject(facts);
  });

  test("going on after it is too short, not a turning back", () => {
    expect(judgeReading("right", readAfter([-50]), 0, RULES)).toBe("too-short");
  });

  test("coming back from it is a coming back", () => {
    expect(judgeReading("right", readAfter([-28]), 0, RULES)).toBe("came-back");
  });
});
