import { describe, expect, test } from "vitest";
import threeWheel from "../../shared/profiles/three-wheel.json" with { type: "json" };
import { type Combination, parseCombination } from "../../src/lock/combination";
import { type Graduations, reading } from "../../src/lock/dial";
import { LockError } from "../../src/lock/lockError";
import type { Profile, WheelPackProfile } from "../../src/lock/profile";
import { parseProfile } from "../../src/lock/profileSchema";
import { WheelPack } from "../../src/lock/wheelPack";
import { packProfile, stopsOf } from "./testPacks";

const onlyWheelPack = (profile: Profile): WheelPackProfile => {
  if (profile.kind !== "wheel-pack") throw new TypeError("not a wheel pack");
  return profile;
};
const profile = onlyWheelPack(parseProfile(threeWheel));
const combination: Combination = [33, 67, 46];
const perfect = stopsOf(profile, combination, 0);

/** A pack at reading 0, moved by a hand that goes to these positions. */
function dialed(hand: readonly Graduations[]): WheelPack {
  const pack = new WheelPack(profile, combination);
  pack.turnThrough([0, ...hand]);
  return pack;
}

/** The same stops, each so far from its place, left positive. */
const off = (...by: number[]) => perfect.map((stop, k) => stop + (by[k] ?? 0));
const TO_STOP = -(46 - 5 + 15);
const opens = (hand: readonly Graduations[]) => {
  const pack = dialed(hand);
  pack.turnBy(-100);
  return pack.retraction === 1;
};

describe("clearing", () => {
  const leads = [0, 100].flatMap((a) => [0, 100].flatMap((b) => [0, 37, 100].map((c) => [a, b, c])));
  const starts = leads.flatMap((slack) => [0, 12.5, 88].map((dial) => ({ dial, slack, engagedAt: null })));

  // MIL-HDBK-1013/8 (31 Dec 1989), section 2, item e.8, and NAVEDTRA 14244: to secure the lock, turn the dial at least
  // four full revolutions in one direction.
  test.each([1, -1])("four turns take along every wheel of three, from any start (direction %i)", (way) => {
    for (const start of starts) {
      const pack = new WheelPack(profile, combination, start);
      pack.turnBy(way * 400);
      expect(new Set(pack.stands())).toEqual(new Set([reading(pack.dial, 100)]));
    }
  });

  test.each([
    { turns: 4, clears: true, why: "one more than it takes" },
    { turns: 3, clears: true, why: "one for each wheel" },
    { turns: 2, clears: false, why: "wheel 1 is not met" },
  ])("$turns turns from the worst start: $why", ({ turns, clears }) => {
    const pack = new WheelPack(profile, combination, { dial: 0, slack: [100, 100, 100], engagedAt: null });
    pack.turnBy(turns * 100);
    expect(pack.slack().every((slack) => slack === 0)).toBe(clears);
  });

  test.each([
    { arrivals: 4, opensAlways: true },
    { arrivals: 3, opensAlways: false },
  ])("$arrivals arrivals at the first number", ({ arrivals, opensAlways }) => {
    const opened = starts.map((start) => {
      const stops = stopsOf(profile, combination, start.dial);
      const tooMany = (4 - arrivals) * 100;
      const pack = new WheelPack(profile, combination, start);
      pack.turnThrough([start.dial, ...stops.map((stop) => stop - tooMany)]);
      pack.turnBy(-100);
      return pack.retraction === 1;
    });
    expect(opened.every(Boolean)).toBe(opensAlways);
  });
});

describe("33-67-46", () => {
  test("stands under the fence and opens at a positive stop that reads 90", () => {
    const pack = dialed(perfect);
    expect(pack.errors()).toEqual([0, 0, 0]);
    expect(pack.retraction).toBe(0);
    pack.turnBy(TO_STOP);
    expect(pack.retraction).toBe(1);
    expect(reading(pack.dial, 100)).toBe(90);
  });

  test("a hand that pushes on 20 moves nothing, and moves the dial back 20 when it comes back 20", () => {
    const pack = dialed(perfect);
    pack.turnBy(TO_STOP);
    const atStop = pack.state;
    pack.turnBy(-20);
    expect(pack.state).toEqual(atStop);
    pack.turnBy(20);
    expect(reading(pack.dial, 100)).toBe(10);
  });

  test("the dial moves freely between engagement and stop", () => {
    const pack = dialed(perfect);
    pack.turnBy(TO_STOP + 7.5);
    expect(pack.retraction).toBe(0.5);
    pack.turnBy(7.5);
    expect([pack.retraction, pack.engagedAt]).toEqual([0, pack.dial]);
  });

  test.each([
    { after: "just thrown", back: [16], isOpen: true, why: "the wheels are not disturbed yet" },
    { after: "turned back to the last number", back: [56], isOpen: true, why: "the last wheel is met, not moved" },
    { after: "turned back beyond it", back: [60, 4], isOpen: false, why: "the last wheel is carried on" },
    { after: "spun off", back: [400], isOpen: false, why: "every wheel is carried on" },
  ])("$after, turning right once more: $why", ({ back, isOpen }) => {
    const pack = dialed([...perfect, (perfect[2] ?? 0) + TO_STOP]);
    for (const by of back) pack.turnBy(by);
    expect(pack.engagedAt).toBeNull();
    pack.turnBy(-100);
    expect(pack.retraction === 1).toBe(isOpen);
  });
});

describe("crossing the engagement point", () => {
  // All numbers lie on it, so every gate is true there once every wheel is carried; wheel 1 is so in the last turn only.
  test.each([2, 3, 4, 5, 6])("%i wheels: one long move ends where short ones do", (wheels) => {
    const freePlay = Array.from({ length: wheels }, () => 100);
    const lock = packProfile({ freePlay, firstTurn: wheels % 2 === 0 ? "right" : "left" });
    const fives = freePlay.map(() => 5);
    const start = { dial: 50, slack: freePlay.map(() => 0), engagedAt: null };
    const [long, short] = [new WheelPack(lock, fives, start), new WheelPack(lock, fives, start)];
    long.turnBy(-1000);
    for (let turned = 0; turned < 1000; turned += 2.5) short.turnBy(-2.5);
    expect(long.retraction).toBe(1);
    expect(long.engagedAt).toBe(5 - wheels * 100);
    expect(short.state).toEqual(long.state);
  });

  test.each([
    { dial: 5.5, by: -0.5, drops: true, why: "reaching it is enough" },
    { dial: 5, by: -1, drops: false, why: "standing on it is not crossing it" },
    { dial: 4, by: 2, drops: false, why: "from the other side the cam gate passes the nose by" },
  ])("from $dial by $by: $why", ({ dial, by, drops }) => {
    const wide = packProfile({ freePlay: [100, 100, 100], gateTolerance: 50 });
    const pack = new WheelPack(wide, combination, { dial, slack: [0, 0, 0], engagedAt: null });
    pack.turnBy(by);
    expect(pack.engagedAt !== null).toBe(drops);
  });
});

describe("the hand errs", () => {
  const [one = 0, two = 0, three = 0] = perfect;
  // A wheel that is carried too far ends at the number of the wheel that carried it; one too few lets it be carried later.
  test.each([
    { why: "a fourth arrival at the second number", hand: [one, two - 100, three - 100], errors: [67 - 33, 0, 0] },
    { why: "one arrival too few at the second", hand: [one, two + 100, three + 100], errors: [46 - 33, 46 - 67, 0] },
    { why: "a third arrival at the last number", hand: [one, two, three + 100], errors: [46 - 33, 46 - 67, 0] },
    { why: "second number overshot", hand: [one, two - 4, three], errors: [0, -4, 0] },
    { why: "second number overshot and come back onto", hand: [one, two - 4, two, three], errors: [0, -4, 0] },
    { why: "first number overshot and come back onto", hand: [one + 4, one, two, three], errors: [4, 0, 0] },
    { why: "last number overshot and come back onto", hand: [one, two, three + 4, three], errors: [0, 0, 4] },
  ])("$why leaves the lock shut", ({ hand, errors }) => {
    expect(dialed(hand).errors()).toEqual(errors);
    expect(opens(hand)).toBe(false);
  });

  test("the first number may be gone round to again after it was overshot", () => {
    const [second = 0, third = 0] = [two + 100, three + 100];
    expect(opens([one + 4, one + 100, second, third])).toBe(true);
  });
});

describe("a gate of 1.25", () => {
  const JUST_MORE = 1.25 + 1 / 64;
  test.each([
    { by: [1.25, 0, 0], isOpen: true },
    { by: [0, -1.25, 0], isOpen: true },
    { by: [1.25, -1.25, 1.25], isOpen: true },
    { by: [-1.25, 1.25, -1.25], isOpen: true },
    { by: [JUST_MORE, 0, 0], isOpen: false },
    { by: [0, JUST_MORE, 0], isOpen: false },
    { by: [0, 0, -JUST_MORE], isOpen: false },
  ])("stops off by $by: opens $isOpen", ({ by, isOpen }) => {
    expect(dialed(off(...by)).errors()).toEqual(by);
    expect(dialed(off(...by)).isAligned()).toBe(isOpen);
    expect(opens(off(...by))).toBe(isOpen);
  });
});

// MIL-HDBK-1013/8 (31 Dec 1989), section 2, item e: a three-wheel lock of 100 graduations has nominally 1,000,000
// combinations. Counted here from what the profile lets one dial.
test("three wheels of 100 have a million combinations", () => {
  const isDialed = (numbers: number[]) => {
    try {
      return parseCombination(profile, numbers).length === numbers.length;
    } catch {
      return false;
    }
  };
  const marks = Array.from({ length: 300 }, (_, k) => k - 100);
  const choices = profile.procedure.map((_, k) => marks.filter((mark) => isDialed([1, 1, 1].with(k, mark))).length);
  expect(choices.reduce((product, count) => product * count, 1)).toBe(1_000_000);
});

describe("a start that cannot be", () => {
  const rest = { dial: 0, slack: [0, 0, 0], engagedAt: null };
  test.each([
    {
      why: "a wheel without slack",
      start: { ...rest, slack: [0, 0] },
      code: "slack-count",
      says: "slack has 2 entries",
    },
    {
      why: "a wheel alone",
      start: { ...rest, slack: [0] },
      code: "slack-count",
      says: "slack has 1 entry, but this pack has 3 wheels",
    },
    { why: "a wheel too many", start: { ...rest, slack: [0, 0, 0, 0] }, code: "slack-count", says: "has 3 wheels" },
    {
      why: "a wheel behind its driver",
      start: { ...rest, slack: [0, -1, 0] },
      code: "slack-beyond-play",
      says: "slack[1]",
    },
    {
      why: "more lead than play",
      start: { ...rest, slack: [0, 0, 100.5] },
      code: "slack-beyond-play",
      says: "slack[2]",
    },
    { why: "no number", start: { ...rest, slack: [Number.NaN, 0, 0] }, code: "slack-beyond-play", says: "slack[0]" },
    { why: "a dial nowhere", start: { ...rest, dial: Number.NaN }, code: "too-far", says: "NaN" },
    { why: "a dial too far off", start: { ...rest, dial: -2e9 }, code: "too-far", says: "-2000000000" },
    { why: "a nose down off its cam gate", start: { ...rest, engagedAt: 3 }, code: "nose-misfit", says: "engagedAt 3" },
    {
      why: "a nose down nowhere",
      start: { ...rest, engagedAt: Number.NaN },
      code: "nose-misfit",
      says: "engagedAt NaN",
    },
    { why: "a dial beyond the stop", start: { ...rest, dial: -11, engagedAt: 5 }, code: "nose-misfit", says: "-11" },
    {
      why: "a dial before the nose fell",
      start: { ...rest, dial: 6, engagedAt: 5 },
      code: "nose-misfit",
      says: "at 6",
    },
  ])("$why: $code", ({ start, code, says }) => {
    const begin = () => new WheelPack(profile, combination, start);
    expect(begin).toThrow(LockError);
    expect(begin).toThrow(expect.objectContaining({ code, message: expect.stringContaining(says) }));
  });

  test("a refused picture leaves the pack as it was", () => {
    const pack = dialed(perfect);
    const before = pack.state;
    expect(() => pack.restore({ ...rest, slack: [0, 0, 101] })).toThrow(LockError);
    expect(pack.state).toEqual(before);
  });
});
