import { expect, test } from "vitest";
import { shownAttempt } from "../../../../src/app/classroom/board/shownAttempt";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { describeSource } from "../../../../src/realdial/sources/sourceDescription";
import { motionText } from "../../../../src/records/motion/traceCodec";
import type { GrowingAttempt } from "../../../../src/school/wire/liveWire";

const profile = shippedProfile("three-wheel");
const combination = [...(profile.asSet ?? [])];
const path = idealMotion(profile, combination, 0, [3], 5);

/** An attempt as far as so many of its stops. */
const told = (stops: number, other: Partial<GrowingAttempt> = {}): GrowingAttempt => {
  const positions = path.slice(0, stops + 1);
  const times_ms = positions.map((_, k) => 1000 * k);
  const motion = motionText({ start: { dial: 0, slack: [0, 0, 0] }, positions, times_ms });
  return { id: "a", startedAt: 0, profileId: profile.id, combination, motion, ...other };
};

test("an attempt is played as far as it has come, and has no outcome before its end", () => {
  const growing = shownAttempt(told(2), false);
  expect(growing.outcome).toBeNull();
  expect(growing.playback.whole.dial).toBeCloseTo(path[2] ?? 0);
  expect(growing.faults.map(({ code }) => code)).toContain("ran-past");
  const ended = shownAttempt(told(path.length), true);
  expect(ended.outcome?.opened).toBe(false);
  expect(ended.playback.duration_ms).toBe(1000 * (path.length - 1));
});

test("what coarse steps make of a stop is no fault, as at the bench", () => {
  const sources = [describeSource("knob-keys", 5, null, true)];
  expect(shownAttempt(told(2, { sources }), false).faults.map(({ code }) => code)).not.toContain("ran-past");
});

test("a lock of its own comes along; what is no attempt is refused", () => {
  const ownProfile = { ...profile, id: "own-lock" };
  expect(shownAttempt(told(2, { profileId: "own-lock", ownProfile }), false).playback.whole.profile.id).toBe(
    "own-lock",
  );
  for (const bad of [{ profileId: "nowhere" }, { motion: "AAAA" }, { combination: [1] }, { ownProfile: {} }]) {
    expect(() => shownAttempt(told(2, bad), false)).toThrow();
  }
});
