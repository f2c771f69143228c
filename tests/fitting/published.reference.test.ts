import fc from "fast-check";
import { describe, expect, test } from "vitest";
import table from "../../shared/fitting.json" with { type: "json" };
import ada from "../../shared/published/ada-door-hardware.json" with { type: "json" };
import friction from "../../shared/published/friction-of-steel.json" with { type: "json" };
import unified from "../../shared/published/unified-threads.json" with { type: "json" };
import { sizesFor, TRAINING_SIZES } from "../../src/fitting/fittingSizes";
import { dialHeight, OPEN_REACH, REACH } from "../../src/fitting/geometry/dialHeight";
import { leadOf } from "../../src/fitting/geometry/spindleThread";
import { contactArc } from "../../src/fitting/keySeat";
import { SHIPPED_PROFILES } from "../../src/lock/shippedProfiles";
import { SKIN_mm, touchingPart } from "./rigidBodyKey";

describe(`${unified.source} (${unified.status})`, () => {
  // Major and pitch diameter are three quarters of the sharp height apart, which is half the root of 3 times the pitch.
  const pitches = 2 / (0.75 * Math.sqrt(3));

  test.each(unified.threads)("size $size, $perInch threads an inch: the lead is the pitch of its diameters", (one) => {
    const pitch_mm = (one.major_in - one.pitchDiameter_in) * pitches * unified.inch.mm;
    // Each diameter is rounded to a ten-thousandth of an inch.
    const rounding_mm = 2 * 0.00005 * pitches * unified.inch.mm;
    expect(Math.abs(leadOf(one.perInch) - pitch_mm)).toBeLessThanOrEqual(rounding_mm);
  });

  test(`one thread an inch leads by one inch: ${unified.inch.source} (${unified.inch.status})`, () => {
    expect(leadOf(1)).toBe(unified.inch.mm);
    expect(leadOf(TRAINING_SIZES.threadsPerInch)).toBe(0.635);
  });
});

describe(`${ada.source} (${ada.status})`, () => {
  test.each([
    { section: "404.2.7", here: REACH, published: ada },
    { section: "308.2.1 and 308.3.1", here: OPEN_REACH, published: ada.openReach },
  ])(
    "$section: inches as printed, millimeters within both printed figures, rounded inward",
    ({ here, published, section }) => {
      expect(here).toMatchObject({ least_in: published.least.in, most_in: published.most.in });
      expect(here.least_mm).toBe(Math.max(published.least.mm, Math.ceil(published.least.in * unified.inch.mm)));
      expect(here.most_mm).toBe(Math.min(published.most.mm, Math.floor(published.most.in * unified.inch.mm)));
      expect(here.source).toContain(section);
      // The standard prints millimeters in steps of 5.
      for (const { in: inches, mm } of [published.least, published.most]) {
        expect(5 * Math.round((inches * unified.inch.mm) / 5)).toBe(mm);
      }
    },
  );

  test("what door hardware may be at is within an open reach", () => {
    expect(OPEN_REACH.least_mm).toBeLessThanOrEqual(REACH.least_mm);
    expect(OPEN_REACH.most_mm).toBeGreaterThanOrEqual(REACH.most_mm);
  });

  test("holds for the doors that are shipped, and both its limits are in", () => {
    for (const profile of SHIPPED_PROFILES) expect(dialHeight(sizesFor(profile).dialHeight_mm)).toBe("in-reach");
    expect([864.9, 865, 1219, 1219.1].map(dialHeight)).toEqual(["too-low", "in-reach", "in-reach", "too-high"]);
    const { least, most } = table.sizes.dialHeight_mm;
    expect([least, most].map(dialHeight)).toEqual(["too-low", "too-high"]);
  });
});

test(`friction of a greased washer and of a dry edge: ${friction.source} (${friction.status})`, () => {
  const { frictionFlat, frictionEdge } = TRAINING_SIZES;
  expect(frictionFlat).toBeGreaterThanOrEqual(friction.oiled.sliding);
  expect(frictionFlat).toBeLessThanOrEqual(friction.oiled.static);
  expect(frictionEdge).toBeGreaterThanOrEqual(friction.dry.sliding);
  expect(frictionEdge).toBeLessThanOrEqual(friction.dry.static);
});

describe("a key that rides on the lever, by a rigid-body engine", () => {
  const key = fc.record({
    keyAt_mm: fc.double({ min: 5, max: 15, noNaN: true }),
    headRadius_mm: fc.double({ min: 0.5, max: 3, noNaN: true }),
    leverAt_mm: fc.double({ min: 4, max: 15, noNaN: true }),
  });

  test("is against it for as much of a turn as the engine has them touch", () => {
    fc.assert(
      fc.property(key, (one) => {
        const { part, step } = touchingPart(one);
        // One step at either end, and the engine's skin: what a lever nearer or farther by as much would give.
        const near = contactArc({ ...one, leverAt_mm: one.leverAt_mm - SKIN_mm }, 1);
        const far = contactArc({ ...one, leverAt_mm: one.leverAt_mm + SKIN_mm }, 1);
        expect(part).toBeGreaterThanOrEqual(far - 2 * step);
        expect(part).toBeLessThanOrEqual(near + 2 * step);
      }),
      { numRuns: 25 },
    );
  });

  test("is against it as long as the training lock says", () => {
    const { keyAt_mm, keyHead_mm, leverAt_mm } = TRAINING_SIZES;
    const one = { keyAt_mm, headRadius_mm: keyHead_mm, leverAt_mm };
    expect(touchingPart(one).part).toBeCloseTo(contactArc(one, 1), 2);
  });
});
