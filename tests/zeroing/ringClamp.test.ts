import { describe, expect, test } from "vitest";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import {
  clampRing,
  indexErrorEstimate,
  profileCreep,
  RING_TRAVEL,
  turnRing,
  USUAL_CREEP,
} from "../../src/zeroing/ringClamp";
import { usualRules } from "../../src/zeroing/zeroingRules";
import { seeded } from "../support/seeded";
import { EXACT, EXACT_INDEX_ERROR, ZeroBench } from "../support/zeroBench";

test.each([
  { from: 0, by: 1.5, to: 1.5 },
  { from: 1.5, by: -2, to: -0.5 },
  { from: 4, by: 3, to: RING_TRAVEL },
  { from: -4, by: -300, to: -RING_TRAVEL },
])("a ring at $from turned by $by stands at $to", ({ from, by, to }) => {
  expect(turnRing(from, by)).toBe(to);
});

describe("clamping", () => {
  test("creeps within the range, both ways, and the same for the same seed", () => {
    const creeps = Array.from({ length: 500 }, (_, seed) => clampRing(1, seeded(seed)) - 1);
    expect(Math.min(...creeps)).toBeGreaterThanOrEqual(USUAL_CREEP[0] - 1e-12);
    expect(Math.max(...creeps)).toBeLessThanOrEqual(USUAL_CREEP[1] + 1e-12);
    expect(creeps.some((creep) => creep < -0.1) && creeps.some((creep) => creep > 0.1)).toBe(true);
    expect(creeps).toEqual(Array.from({ length: 500 }, (_, seed) => clampRing(1, seeded(seed)) - 1));
  });

  test("of a ring that does not creep leaves it where it is", () => {
    expect(clampRing(0.25, () => 0.9, [0, 0])).toBe(0.25);
  });

  test("never creeps out of the slots", () => {
    expect(clampRing(RING_TRAVEL, () => 0.99, [0, 0.5])).toBe(RING_TRAVEL);
  });

  test("takes its range from the profile, and the usual one where it states none", () => {
    const profile = shippedProfile("dial-encoder");
    if (profile.kind !== "dial-encoder") throw new Error("another kind of lock");
    expect(profileCreep(profile)).toEqual(USUAL_CREEP);
    expect(profileCreep({ ...profile, zeroing: { ringCreep: [0, 1] } })).toEqual([0, 1]);
    expect(profileCreep({ ...profile, zeroing: undefined })).toEqual(USUAL_CREEP);
  });
});

test("the index error shows in the readings from the left", () => {
  const bench = new ZeroBench({ ...usualRules(100), order: ["left", "right"] }, EXACT);
  bench.make({ type: "ring.clamped" });
  for (const deviation of [-0.125, 0, 0.125]) {
    bench.turnOnto("left", deviation);
    bench.read();
  }
  const { estimate, ci95 } = indexErrorEstimate(bench.state.context.accepted.left.map(({ cam }) => cam));
  expect(estimate).toBe(EXACT_INDEX_ERROR);
  // t(0.975, 2) is 4.303 and s / sqrt(3) 0.0722.
  expect(ci95.high - estimate).toBeCloseTo(0.3105, 4);
});
