import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { drawCondition, profileRanges, USUAL_RANGES, type ZeroCondition, ZeroLock } from "../../src/zeroing/zeroLock";
import { seeded } from "../support/seeded";

const CONDITION: ZeroCondition = { indexOffset: 0.75, lostMotion: 1.5, noise: 0, start: 10 };
const none = () => 0.5;

describe("the cam behind a dial", () => {
  const lock = new ZeroLock(CONDITION, 100);
  test.each([
    { why: "stands with the dial to begin with", by: 0, cam: 10 },
    { why: "goes along to the left", by: 5, cam: 15 },
    { why: "waits while the dial turns about", by: -1, cam: 15 },
    { why: "waits as far as the play goes", by: -0.5, cam: 15 },
    { why: "then follows, behind by the play", by: -10, cam: 5 },
    { why: "waits again", by: 1.5, cam: 5 },
    { why: "goes along to the left again", by: 2, cam: 7 },
  ])("$why", ({ by, cam }) => {
    lock.turnBy(by);
    expect(lock.camDeviation).toBe(cam);
    expect(lock.readCam(none)).toBe(cam);
  });
});

test("a dial that is held back takes the cam with it", () => {
  const lock = new ZeroLock(CONDITION, 100);
  lock.turnBy(-20);
  lock.holdBack(-5);
  expect([lock.dial, lock.camPosition, lock.camTurn]).toEqual([-5, -3.5, "right"]);
});

test("the cam's own direction changes with the cam, not with the dial", () => {
  const lock = new ZeroLock(CONDITION, 100);
  const turns = [-1, -1, 1, 1].map((by) => {
    lock.turnBy(by);
    return lock.camTurn;
  });
  expect(turns).toEqual([null, "right", "right", "left"]);
});

describe("the index as drawn", () => {
  test("reads zero where the dial stands as far off as the index does", () => {
    const lock = new ZeroLock({ ...CONDITION, start: 0.75 }, 100);
    expect([lock.indexError, lock.seen, lock.seenDeviation]).toEqual([0.75, 0, 0]);
  });

  test("follows the ring", () => {
    const lock = new ZeroLock({ ...CONDITION, start: 0 }, 100);
    lock.ringTurn = -0.75;
    expect([lock.indexError, lock.seenDeviation]).toEqual([0, 0]);
    lock.ringTurn = 0.25;
    expect([lock.indexError, lock.seenDeviation]).toEqual([1, -1]);
  });

  test("reads left of zero where the dial stands left of it, over any number of turns", () => {
    for (const turns of [-300, 0, 500]) {
      expect(new ZeroLock({ ...CONDITION, indexOffset: 0, start: turns + 2 }, 100).seenDeviation).toBe(2);
      expect(new ZeroLock({ ...CONDITION, indexOffset: 0, start: turns - 2 }, 100).seenDeviation).toBe(-2);
    }
  });
});

const sixtyFourths = (low: number, high: number) => fc.integer({ min: low * 64, max: high * 64 }).map((n) => n / 64);
const condition = fc.record({
  indexOffset: sixtyFourths(-5, 5),
  lostMotion: sixtyFourths(0, 2),
  noise: fc.constant(0),
  start: sixtyFourths(0, 100),
});

/** Brings the zero mark to the index as drawn, from half a turn away. */
function broughtTo(lock: ZeroLock, turn: "left" | "right"): void {
  const sign = turn === "left" ? 1 : -1;
  lock.turnBy(-lock.seenDeviation - 50 * sign);
  lock.turnBy(50 * sign);
}

test("a perfect hand leaves the cam at the true zero of the side it came from, wherever the ring is", () => {
  fc.assert(
    fc.property(condition, sixtyFourths(-5, 5), fc.constantFrom("left", "right"), (hidden, ring, turn) => {
      const lock = new ZeroLock(hidden, 100);
      lock.ringTurn = ring;
      broughtTo(lock, turn);
      expect(lock.seenDeviation).toBe(0);
      expect(lock.readCam(none)).toBe(lock.trueZero(turn));
    }),
  );
});

test("the cam is never farther from the dial than the play", () => {
  fc.assert(
    fc.property(condition, fc.array(sixtyFourths(-20, 20)), (hidden, moves) => {
      const lock = new ZeroLock({ ...hidden, start: 0 }, 100_000);
      for (const by of moves) {
        lock.turnBy(by);
        const behind = lock.camDeviation - lock.dial;
        expect(behind).toBeGreaterThanOrEqual(0);
        expect(behind).toBeLessThanOrEqual(hidden.lostMotion);
      }
    }),
  );
});

describe("a hidden condition", () => {
  test("lies within its ranges, and is the same for the same seed", () => {
    for (let seed = 0; seed < 200; seed++) {
      const drawn = drawCondition(USUAL_RANGES, 100, seeded(seed));
      for (const key of ["indexOffset", "lostMotion", "noise"] as const) {
        expect(drawn[key]).toBeGreaterThanOrEqual(USUAL_RANGES[key][0]);
        expect(drawn[key]).toBeLessThanOrEqual(USUAL_RANGES[key][1]);
      }
      expect(drawn).toEqual(drawCondition(USUAL_RANGES, 100, seeded(seed)));
      expect(drawn.start % 0.01).not.toBe(0);
    }
  });

  test("takes its ranges from the profile, and the usual ones where it states none", () => {
    const profile = shippedProfile("dial-encoder");
    if (profile.kind !== "dial-encoder") throw new Error("another kind of lock");
    expect(profileRanges(profile)).toEqual(USUAL_RANGES);
    expect(profileRanges({ ...profile, zeroing: { lostMotion: [1, 1] } })).toEqual({
      ...USUAL_RANGES,
      lostMotion: [1, 1],
    });
    expect(profileRanges({ ...profile, zeroing: undefined })).toEqual(USUAL_RANGES);
  });

  test("with noise gives readings that spread by it", () => {
    const lock = new ZeroLock({ ...CONDITION, start: 0, noise: 0.5 }, 100);
    const chance = seeded(7);
    const squares = Array.from({ length: 4000 }, () => lock.readCam(chance) ** 2);
    // The standard error of a variance from 4000 is 2.2 %: five of them.
    expect(squares.reduce((a, b) => a + b) / 4000).toBeCloseTo(0.25, 1.5);
  });
});
