import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Attempt } from "../../../src/dialing/attempt";
import { HeldLock, HOLDBACK_PLAY, type HoldbackRefusal } from "../../../src/handover/holdback/heldLock";
import { signOf } from "../../../src/lock/dial";
import type { Profile } from "../../../src/lock/profile";
import { SHIPPED_PROFILES } from "../../../src/lock/shippedProfiles";
import { openBy } from "../change/changeHands";

const aMove = fc.double({ min: -450, max: 450, noNaN: true });
const someMoves = fc.array(aMove, { maxLength: 15 });

function openedLock(profile: Profile): HeldLock {
  const combination = profile.asSet ?? [];
  const lock = new HeldLock(new Attempt(profile, combination, { dial: 0 }));
  openBy(lock, profile, combination);
  return lock;
}

const refused = (why: HoldbackRefusal) => [{ type: "holdback.refused", why }];

const seen = ({ attempt }: HeldLock) => ({
  dial: attempt.dial,
  retraction: attempt.retraction,
  wheels: attempt.pack?.state ?? null,
});

describe.each(SHIPPED_PROFILES)("$id", (profile) => {
  test("the slide goes on only with the bolt back, and the door then does not lock", () => {
    const shut = new HeldLock(new Attempt(profile, profile.asSet ?? [], { dial: 0 }));
    expect([shut.setHoldback(), shut.locksDoor]).toEqual([refused("bolt-not-back"), true]);
    const lock = openedLock(profile);
    expect([lock.setHoldback(), lock.isHeld, lock.locksDoor]).toEqual([[{ type: "holdback.set" }], true, false]);
    expect([lock.setHoldback(), lock.releaseHoldback(), lock.releaseHoldback()]).toEqual([
      refused("already-on"),
      [{ type: "holdback.released" }],
      refused("already-off"),
    ]);
  });

  test("no sequence of turns moves the bolt or the wheels of a held lock, nor the dial beyond its play", () => {
    fc.assert(
      fc.property(someMoves, (moves) => {
        const lock = openedLock(profile);
        lock.setHoldback();
        const before = seen(lock);
        for (const by of moves) {
          lock.turnBy(by);
          expect(seen(lock)).toEqual(before);
          const back = (before.dial - lock.dial) * signOf(profile.draw.turn);
          expect(back).toBeGreaterThanOrEqual(-1e-9);
          expect(back).toBeLessThanOrEqual(HOLDBACK_PLAY + 1e-9);
        }
      }),
    );
  });

  test("released, it is the lock that was never held, turned to where its dial had given way", () => {
    fc.assert(
      fc.property(someMoves, someMoves, (held, free) => {
        const lock = openedLock(profile);
        const plain = openedLock(profile);
        lock.setHoldback();
        for (const by of held) lock.turnBy(by);
        const at = lock.dial;
        lock.releaseHoldback();
        plain.turnBy(at - plain.dial);
        for (const by of free) expect(lock.turnBy(by)).toEqual(plain.turnBy(by));
        expect(lock.retraction).toBeCloseTo(plain.retraction, 9);
        expect(lock.dial).toBeCloseTo(plain.dial, 6);
      }),
    );
  });

  test("a hand that turns against the slide is told so, once for every such turn", () => {
    const lock = openedLock(profile);
    lock.setHoldback();
    const out = -signOf(profile.draw.turn);
    expect(lock.turnBy(out * 0.2)).toEqual([]);
    expect(lock.turnBy(out * 30)).toEqual([{ type: "dial.held", by: 30 + 0.2 - HOLDBACK_PLAY }]);
    expect(lock.turnBy(-out * 30)).toEqual([]);
  });
});
