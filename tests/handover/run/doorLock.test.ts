import { describe, expect, test } from "vitest";
import { DoorLock, type KeptLock } from "../../../src/handover/run/doorLock";
import { SHIPPED_PROFILES, shippedProfile } from "../../../src/lock/shippedProfiles";
import { ZeroLock } from "../../../src/zeroing/zeroLock";

const SPUN_OFF = { dial: 0, isOpen: false, isHeld: false };
const lockOf = (id: string, more: Partial<KeptLock> = {}, indexOffset = 0) => {
  const profile = shippedProfile(id);
  const meant = profile.asSet ?? [];
  const hand = new ZeroLock({ indexOffset, lostMotion: 0, noise: 0, start: 0 }, profile.graduations);
  const zero = profile.kind === "wheel-pack" ? null : { right: 0, left: 0 };
  return new DoorLock(profile, hand, { meant, setTo: meant, ...SPUN_OFF, ...more }, zero);
};

describe.each(SHIPPED_PROFILES.map(({ id }) => id))("%s on a door", (id) => {
  test("opens to its combination, again and again, and throws its bolt in between", () => {
    const lock = lockOf(id);
    expect(lock.dialBy(lock.meant, [])).toBe(true);
    expect(lock.dialBy(lock.meant, [])).toBe(true);
    expect(lock.retraction).toBe(1);
  });

  test("does not open to what it is not set to, and then still opens to what it is", () => {
    const meant = shippedProfile(id).asSet ?? [];
    const setTo = meant.map((number, k) => (k === 0 ? number + 4 : number));
    const lock = lockOf(id, { setTo });
    expect(lock.dialBy(meant, [])).toBe(false);
    expect(lock.dialBy(setTo, [])).toBe(true);
  });

  test("dialed at an index that stands off, it does not open", () => {
    const lock = lockOf(id, {}, 3.5);
    expect(lock.dialBy(lock.meant, [])).toBe(false);
  });

  test("held back it neither throws its bolt nor is spun off; released it does both", () => {
    const lock = lockOf(id);
    lock.dialBy(lock.meant, []);
    lock.setHoldback();
    expect([lock.spinOff(), lock.retraction]).toEqual([["held"], 1]);
    lock.releaseHoldback();
    expect(lock.spinOff()).toEqual(["thrown", "spunOff"]);
    expect(lock.retraction).toBe(0);
  });

  test("kept and taken up again it stands as it did", () => {
    const lock = lockOf(id);
    lock.dialBy(lock.meant, []);
    lock.setHoldback();
    const again = lockOf(id, lock.kept);
    expect([again.retraction, again.isHeld, again.spinOff()]).toEqual([1, true, ["held"]]);
  });

  test("spoiled, it opens to no numbers as written", () => {
    const lock = lockOf(id);
    lock.set(lock.meant, null);
    expect(lock.dialBy(lock.meant, [])).toBe(false);
    expect(lock.retraction).toBe(0);
  });
});

test("an encoder lock that has learned no zero does not open; with one it does", () => {
  const lock = lockOf("dial-encoder");
  lock.learn(null);
  expect(lock.dialBy(lock.meant, [])).toBe(false);
  lock.learn({ right: 0, left: 0 });
  expect(lock.dialBy(lock.meant, [])).toBe(true);
});
