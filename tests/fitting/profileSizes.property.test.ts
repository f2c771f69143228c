import fc from "fast-check";
import { expect, test } from "vitest";
import table from "../../shared/fitting.json" with { type: "json" };
import threeWheel from "../../shared/profiles/three-wheel.json" with { type: "json" };
import { inTheTray } from "../../src/fitting/assembly";
import { fitFaults } from "../../src/fitting/fitFault";
import { lockWith } from "../../src/fitting/fittedLock";
import { LockError } from "../../src/lock/lockError";
import type { Profile, SizeName } from "../../src/lock/profile";
import { parseProfile } from "../../src/lock/profileSchema";
import { after, fitted, goodActs } from "../support/fitter";

/** Some sizes, each anywhere between its limits. */
const sizes = fc.record(
  Object.fromEntries(
    Object.entries(table.sizes).map(([name, { unit, least, most }]) => [
      name,
      unit === "count" ? fc.integer({ min: least, max: most }) : fc.double({ min: least, max: most, noNaN: true }),
    ]),
  ) as Record<SizeName, fc.Arbitrary<number>>,
  { requiredKeys: [] },
);
const few = sizes.chain((all) =>
  fc
    .subarray(Object.keys(all) as SizeName[], { maxLength: 4 })
    .map((names) => Object.fromEntries(names.map((name) => [name, all[name]]))),
);

/** The profile, or null where its sizes are refused. */
function profileWith(fitting: object): Profile | null {
  try {
    return parseProfile({ ...threeWheel, fitting });
  } catch (error) {
    expect(error).toBeInstanceOf(LockError);
    expect((error as LockError).message).toMatch(/fitting\.\w+ /);
    return null;
  }
}

test("a profile's sizes are refused at one of them, or make a lock that can be fitted without fault", () => {
  let [refused, made] = [0, 0];
  fc.assert(
    fc.property(few, fc.integer({ min: 0, max: 99 }), (fitting, slotAt) => {
      const profile = profileWith(fitting);
      if (profile === null) {
        refused += 1;
        return;
      }
      made += 1;
      const lock = lockWith(profile, slotAt);
      const whole = after(inTheTray(lock.sizes.spindle_mm), goodActs(lock), lock);
      expect(fitFaults(fitted(whole, lock), whole, lock.sizes)).toEqual([]);
    }),
    { numRuns: 3000 },
  );
  expect(Math.min(refused, made)).toBeGreaterThan(300);
});
