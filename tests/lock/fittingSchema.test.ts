import { describe, expect, test } from "vitest";
import table from "../../shared/fitting.json" with { type: "json" };
import oldProfile from "../../shared/profiles/three-wheel.json" with { type: "json" };
import { lockWith } from "../../src/fitting/fittedLock";
import { sizesFor, TRAINING_SIZES } from "../../src/fitting/fittingSizes";
import type { Profile, SizeName } from "../../src/lock/profile";
import { parseProfile } from "../../src/lock/profileSchema";
import { shippedProfile } from "../../src/lock/shippedProfiles";

const withSizes = (fitting: unknown) => parseProfile({ ...oldProfile, fitting });
const sizes = Object.entries(table.sizes) as [SizeName, (typeof table.sizes)[SizeName]][];
/** How far a size may be past its limit and still be refused: a count by one. */
const past = ({ unit }: { readonly unit: string }) => (unit === "count" ? 1 : 1e-6);

describe("sizes of a profile's own", () => {
  test.each(sizes)("%s is taken at its training value and refused past its limits, by its name", (name, size) => {
    expect(size.least).toBeLessThanOrEqual(size.value);
    expect(size.value).toBeLessThanOrEqual(size.most);
    expect(withSizes({ [name]: size.value }).fitting).toEqual({ [name]: size.value });
    for (const wrong of [size.least - past(size), size.most + past(size), "2", null]) {
      expect(() => withSizes({ [name]: wrong })).toThrow(
        new RegExp(`fitting\\.${name} \\(${size.name}\\) must be [^.]*(\\d\\.\\d+[^.]*)*$`),
      );
    }
  });

  test("of a name that is not known are refused, not passed over", () => {
    expect(() => withSizes({ gapLeast: 0.2 })).toThrow(/fitting has a field "gapLeast" that does not belong there/);
    expect(() => withSizes([0.2])).toThrow(/fitting must be an object/);
  });

  test.each([
    [{ gapLeast_mm: 0.9 }, "gapLeast_mm", /less than one turn of the thread \(0\.635 mm\)/],
    [{ gapMost_mm: 0.3, gapLeast_mm: 0.4 }, "gapMost_mm", /between gapLeast_mm and gapMost_mm/],
    [{ threadsPerInch: 20 }, "threadsPerInch", /one turn of the thread \(1\.27 mm\)/],
    [{ spindle_mm: 80 }, "spindle_mm", /shorter than ring, door, plate, body/],
    [{ door_mm: 120 }, "door_mm", /make spindle_mm longer/],
    [{ screwStrips_Nm: 0.4 }, "screwStrips_Nm", /times screwHolds_Nm/],
    [{ hole_mm: 12 }, "hole_mm", /no higher than the bolt/],
    [{ bolt_mm: 20 }, "bolt_mm", /make hole_mm larger/],
    [{ room_mm: 3 }, "room_mm", /no good stack of washers/],
    [{ springRate_N_mm: 30 }, "springRate_N_mm", /must not hold the dial back/],
  ] as const)("%o contradict others, said at %s", (fitting, name, why) => {
    expect(() => withSizes(fitting)).toThrow(why);
    expect(() => withSizes(fitting)).toThrow(new RegExp(`fitting\\.${name} \\(${table.sizes[name].name}\\) `));
  });

  test("take the place of training values in the lock that is fitted, and leave the others", () => {
    const profile = withSizes({ door_mm: 60, keyways: 2 });
    expect(lockWith(profile, 0).sizes).toEqual({ ...TRAINING_SIZES, door_mm: 60, keyways: 2 });
    expect(sizesFor(shippedProfile("small-three-wheel"))).toMatchObject({ markRadius_mm: 26, ring_mm: 12 });
  });

  test("are missing in a profile from before: it is read as it was, and gets the training values", () => {
    const { fitting, ...read } = parseProfile(oldProfile) as Profile;
    expect(fitting).toBeUndefined();
    const { source: _, ...written } = oldProfile;
    expect(read).toEqual(written);
    expect(sizesFor(read as Profile)).toEqual(TRAINING_SIZES);
  });
});
