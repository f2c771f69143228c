import { describe, expect, test } from "vitest";
import { parseProfile } from "../../src/lock/profileSchema";
import { shippedProfile } from "../../src/lock/shippedProfiles";

const profile = shippedProfile("dial-encoder");
const parsed = (zeroing: unknown) => parseProfile({ ...profile, zeroing });
const zeroingOf = (zeroing: unknown) => {
  const one = parsed(zeroing);
  return one.kind === "dial-encoder" ? one.zeroing : undefined;
};

describe("zeroing parameters", () => {
  test("are optional, all and each", () => {
    expect(zeroingOf(undefined)).toBeUndefined();
    expect(zeroingOf({})).toEqual({});
    expect(zeroingOf({ rules: {} })).toEqual({ rules: {} });
  });

  test.each([
    { why: "a range that is one number", zeroing: { lostMotion: [1, 1] } },
    {
      why: "all ranges at their limits",
      zeroing: { indexOffset: [-5, 5], lostMotion: [0, 2], noise: [0, 1], ringCreep: [-2, 2] },
    },
    {
      why: "rules",
      zeroing: { rules: { order: ["left", "right"], wanted: 2, most: 2, approach: 100, risk: 0.49, rest_ms: 0 } },
    },
  ])("are taken as they are: $why", ({ zeroing }) => {
    expect(zeroingOf(zeroing)).toEqual(zeroing);
  });

  test.each([
    { zeroing: 3, says: "zeroing must be such as" },
    { zeroing: { lostMotion: 1 }, says: "zeroing.lostMotion must be a pair of graduations from 0 to 2" },
    { zeroing: { lostMotion: [0, 2.1] }, says: "zeroing.lostMotion[1] must be a pair of graduations from 0 to 2" },
    { zeroing: { lostMotion: [1] }, says: "zeroing.lostMotion must be a pair" },
    { zeroing: { lostMotion: [1, 0.5] }, says: "zeroing.lostMotion must have its low end first, not [1,0.5]" },
    { zeroing: { indexOffset: [-9, 0] }, says: "zeroing.indexOffset[0]" },
    {
      zeroing: { noise: ["much", 1] },
      says: 'zeroing.noise[0] must be a pair of graduations from 0 to 1 such as [0,0.05], not "much"',
    },
    { zeroing: { ringCreep: [1, -1] }, says: "zeroing.ringCreep must have its low end first" },
    { zeroing: { rules: 1 }, says: "zeroing.rules must be such as" },
    { zeroing: { rules: { order: ["left", "left"] } }, says: 'zeroing.rules.order must be ["right","left"]' },
    {
      zeroing: { rules: { order: ["up", "left"] } },
      says: 'zeroing.rules.order[0] must be "left" or "right", not "up"',
    },
    { zeroing: { rules: { wanted: 1 } }, says: "zeroing.rules.wanted must be a whole number from 2 to 20, not 1" },
    { zeroing: { rules: { wanted: 2.5 } }, says: "zeroing.rules.wanted" },
    {
      zeroing: { rules: { wanted: 4, most: 3 } },
      says: "zeroing.rules.most must be at least as many as wanted (4), not 3",
    },
    {
      zeroing: { rules: { spreadLimit: 0 } },
      says: "zeroing.rules.spreadLimit must be a number of graduations above 0",
    },
    {
      zeroing: { rules: { captureWindow: 50 } },
      says: "zeroing.rules.captureWindow must be below half a turn (50 graduations), not 50",
    },
    {
      zeroing: { rules: { approach: 101 } },
      says: "zeroing.rules.approach must be at most one turn (100 graduations), not 101",
    },
    { zeroing: { rules: { rest_ms: -1 } }, says: "zeroing.rules.rest_ms must be a number of milliseconds" },
    {
      zeroing: { rules: { tolerance: "wide" } },
      says: 'zeroing.rules.tolerance must be a number of graduations above 0, not "wide"',
    },
    { zeroing: { rules: { risk: 0.5 } }, says: "zeroing.rules.risk must be a number above 0 and below 0.5, not 0.5" },
    { zeroing: { rules: { consecutive: 1 } }, says: "zeroing.rules.consecutive must be true or false, not 1" },
  ])("$says", ({ zeroing, says }) => {
    expect(() => parsed(zeroing)).toThrow(`profile: ${says}`);
  });

  test("come with the shipped encoder lock", () => {
    expect(profile.kind === "dial-encoder" && profile.zeroing?.rules?.wanted).toBe(3);
  });
});
