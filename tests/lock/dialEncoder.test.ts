import { describe, expect, test } from "vitest";
import { Attempt } from "../../src/dialing/attempt";
import type { DialingFact } from "../../src/dialing/dialingFact";
import type { Graduations, Milliseconds } from "../../src/lock/dial";
import { type EncoderMemory, FRESH_MEMORY, isWaiting, judgeDraw, spellsCombination } from "../../src/lock/dialEncoder";
import type { DialEncoderProfile } from "../../src/lock/profile";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { handled } from "../support/handled";

const shipped = shippedProfile("dial-encoder");
if (shipped.kind !== "dial-encoder") throw new TypeError("not an encoder");
const profile: DialEncoderProfile = shipped;
const combination = [38, 71, 26];

const opens = (hand: readonly Graduations[], times?: readonly Milliseconds[]) =>
  handled(profile, combination, { hand, times }).attempt.opened;

describe("an encoder lock counts at least", () => {
  test.each([
    { why: "just enough arrivals", hand: [0, 338, 71, 226, 211], isOpen: true },
    { why: "more at every number", hand: [0, 638, 171, 426, 411], isOpen: true },
    { why: "one too few at the first", hand: [0, 238, -29, 126, 111], isOpen: false },
    { why: "one too few at the second", hand: [0, 338, 171, 326, 311], isOpen: false },
    { why: "one too few at the last", hand: [0, 338, 71, 126, 111], isOpen: false },
    { why: "gone round again after overrunning the first", hand: [0, 341, 438, 171, 326, 311], isOpen: true },
    { why: "gone round again after overrunning the second", hand: [0, 338, 66, -29, 126, 111], isOpen: true },
    { why: "gone round again after overrunning the last", hand: [0, 338, 71, 230, 326, 311], isOpen: true },
    { why: "every stop off by the tolerance", hand: [0, 339, 72, 227, 212], isOpen: true },
    { why: "one stop off by a hair more", hand: [0, 338, 71, 227.015625, 212], isOpen: false },
    { why: "a turnback on the way breaks the run in two", hand: [0, 338, 200, 205, 71, 226, 211], isOpen: false },
    { why: "a wobble on the way does not", hand: [0, 338, 200, 201, 71, 226, 211], isOpen: true },
    { why: "a draw a hair short", hand: [0, 338, 71, 226, 211.015625], isOpen: false },
    { why: "a draw in two moves", hand: [0, 338, 71, 226, 220, 211], isOpen: true },
    {
      why: "a spoiled attempt, and a sound one after it",
      hand: [0, 338, 66, 226, 200, 538, 271, 426, 411],
      isOpen: true,
    },
    { why: "half a first number, and then a fresh start", hand: [0, 200, 150, 538, 271, 426, 411], isOpen: true },
  ])("$why: opens $isOpen", ({ hand, isOpen }) => {
    expect(opens(hand)).toBe(isOpen);
  });

  test("the positive stop holds the dial, and the hand is let go on moving it back", () => {
    const { attempt } = handled(profile, combination, { hand: [0, 338, 71, 226, 150] });
    expect([attempt.dial, attempt.retraction]).toEqual([211, 1]);
    attempt.turnBy(7.5);
    expect([attempt.dial, attempt.retraction]).toEqual([218.5, 0.5]);
    expect(attempt.turnBy(10)).toContainEqual({ type: "bolt.thrown" });
    expect([attempt.isCoupled, attempt.retraction, attempt.opened]).toEqual([false, 0, true]);
  });
});

test.each([
  { why: "too few runs", runs: 2, isRight: false },
  { why: "as many as the procedure has steps", runs: 3, isRight: true },
  { why: "too many runs", runs: 4, isRight: false },
])("the combination is spelled by $why: $isRight", ({ runs, isRight }) => {
  const sound = ["left", "right", "left", "right"] as const;
  const made = sound.slice(0, runs).map((turn) => ({ turn, arrivals: 4, stopError: 0 }));
  expect(spellsCombination(profile, made)).toBe(isRight);
});

test("runs the other way round spell nothing", () => {
  const made = (["right", "left", "right"] as const).map((turn) => ({ turn, arrivals: 4, stopError: 0 }));
  expect(spellsCombination(profile, made)).toBe(false);
});

describe("a pause", () => {
  const hand = [0, 338, 338, 71, 226, 211];
  const resting = (rest: Milliseconds) => [0, 5000, 5000 + rest, 40_000, 45_000, 47_000];
  test.each([
    { rest: 29_999, isOpen: true },
    { rest: 30_000, isOpen: true },
    { rest: 30_001, isOpen: false },
  ])("of $rest ms: opens $isOpen", ({ rest, isOpen }) => {
    expect(opens(hand, resting(rest))).toBe(isOpen);
  });

  test("counts nowhere before the first turn", () => {
    expect(opens([0, 0, 338, 71, 226, 211], [0, 99_000, 104_000, 109_000, 114_000, 116_000])).toBe(true);
  });

  test("is forgotten at the next fresh start", () => {
    const again = [...hand.slice(0, 3), 200, 538, 271, 426, 411];
    const times = [0, 5000, 36_000, 40_000, 50_000, 55_000, 60_000, 62_000];
    const { attempt, facts } = handled(profile, combination, { hand: again, times });
    expect(facts.map(({ type }) => type)).toContain("pause.exceeded");
    expect(attempt.opened).toBe(true);
  });

  test("of any length is nothing to a motion without times", () => {
    expect(opens(hand)).toBe(true);
  });
});

describe("wrong tries, with the lock's memory handed from attempt to attempt", () => {
  const WRONG = [0, 338, 66, 226, 200];
  const RIGHT = [0, 338, 71, 226, 211];

  /** One attempt of 10 seconds that begins at a time. */
  const attemptAt = (hand: readonly Graduations[], from: Milliseconds, memory: EncoderMemory) => {
    const times = hand.map((_, i) => from + (10_000 * i) / (hand.length - 1));
    const { attempt, facts } = handled(profile, combination, { hand, times, start: { memory } });
    return { opened: attempt.opened, memory: attempt.memory, facts, attempt };
  };
  const refusals = (facts: readonly DialingFact[]) => facts.filter(({ type }) => type === "draw.refused").length;
  const remembered = (wrongs: number) => {
    let memory = FRESH_MEMORY;
    for (let i = 0; i < wrongs; i++) memory = attemptAt(WRONG, i * 20_000, memory).memory;
    return memory;
  };

  test("each is refused once and remembered", () => {
    const { opened, memory, facts } = attemptAt(WRONG, 0, FRESH_MEMORY);
    expect([opened, refusals(facts), memory]).toEqual([false, 1, { wrongTries: 1, waitsUntil_ms: null }]);
  });

  test("two and then a right one: it opens and forgets them", () => {
    const { opened, memory } = attemptAt(RIGHT, 40_000, remembered(2));
    expect([opened, memory]).toEqual([true, FRESH_MEMORY]);
  });

  test("three: it waits a minute from the third draw on", () => {
    expect(remembered(3)).toEqual({ wrongTries: 0, waitsUntil_ms: 50_000 + 60_000 });
  });

  test.each([
    { why: "while it waits, even a right one is refused", from: 60_000, isOpen: false },
    { why: "up to the last moment", from: 99_999, isOpen: false },
    { why: "then it opens", from: 100_000, isOpen: true },
  ])("$why (drawn 10 s after $from)", ({ from, isOpen }) => {
    const { opened, attempt } = attemptAt(RIGHT, from, remembered(3));
    expect(opened).toBe(isOpen);
    expect(isWaiting(attempt.memory, 109_999)).toBe(!isOpen);
  });

  test("a draw made while it waits counts for nothing", () => {
    const waiting = remembered(3);
    expect(attemptAt(WRONG, 60_000, waiting).memory).toEqual(waiting);
  });

  test("after the wait it takes three more", () => {
    const { memory } = attemptAt(WRONG, 120_000, remembered(3));
    expect(memory).toEqual({ wrongTries: 1, waitsUntil_ms: null });
  });

  test("without times it never waits", () => {
    expect(isWaiting(remembered(3), undefined)).toBe(false);
    const { memory } = judgeDraw(profile, { wrongTries: 2, waitsUntil_ms: null }, false, undefined);
    expect(memory).toEqual({ wrongTries: 3, waitsUntil_ms: null });
  });

  test("a lock without such a policy only counts", () => {
    const { wrongTry: _, ...patient } = profile;
    expect(judgeDraw(patient, { wrongTries: 8, waitsUntil_ms: null }, false, 1000)).toEqual({
      answer: "wrong",
      memory: { wrongTries: 9, waitsUntil_ms: null },
    });
  });
});

test("after a pause in the first turn it is enough to go on turning the same way, the whole count again", () => {
  const attempt = new Attempt(shippedProfile("dial-encoder"), [43, 16, 58], { dial: 0 });
  attempt.turnBy(100, 1000);
  attempt.turnBy(0, 40_000);
  const facts = [743 - 100, 516 - 743, 658 - 516, -15].flatMap((by, k) => [...attempt.turnBy(by, 41_000 + 1000 * k)]);
  expect(facts.map(({ type }) => type)).toContain("fresh.started");
  expect(attempt.opened).toBe(true);
});
