import { describe, expect, test } from "vitest";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { profileRules, usualRules } from "../../src/zeroing/zeroingRules";

const profile = shippedProfile("dial-encoder");
if (profile.kind !== "dial-encoder") throw new Error("another kind of lock");
const withRules = (rules: object) => profileRules({ ...profile, zeroing: { rules } });

describe("the rules of a lock", () => {
  test("that come with it are the usual ones", () => {
    expect(profileRules(profile)).toEqual(usualRules(100));
    expect(profileRules({ ...profile, zeroing: undefined })).toEqual(usualRules(100));
  });

  test.each([
    { why: "one that it states", rules: { tolerance: 0.25 }, gives: { tolerance: 0.25, wanted: 3 } },
    { why: "one that is undefined is not stated", rules: { tolerance: undefined }, gives: { tolerance: 0.5 } },
    { why: "more wanted than are usual at most", rules: { wanted: 10 }, gives: { wanted: 10, most: 10 } },
    { why: "fewer at most than are usually wanted", rules: { most: 2 }, gives: { wanted: 2, most: 2 } },
    { why: "both", rules: { wanted: 4, most: 5 }, gives: { wanted: 4, most: 5 } },
    {
      why: "the other side first, in a row",
      rules: { order: ["left", "right"], consecutive: true },
      gives: { order: ["left", "right"], consecutive: true },
    },
  ])("$why", ({ rules, gives }) => {
    expect(withRules(rules)).toEqual({ ...usualRules(100), ...gives });
  });

  test("ask for a quarter turn of any dial", () => {
    expect(profileRules({ ...profile, zeroing: undefined, graduations: 60 }).approach).toBe(15);
  });
});
