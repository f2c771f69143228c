import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { agreesWithRule, layRule, RULE_STEP_mm, radiusBy } from "../../../src/fitting/instruments/markRule";

/** Radii of marks that a profile may have, millimeters in hundredths. */
const radii = fc.integer({ min: 2000, max: 4200 }).map((hundredths) => hundredths / 100);

describe("a rule across two opposite marks", () => {
  test.each([
    { radius_mm: 40, from_mm: 10, to_mm: 90 },
    { radius_mm: 40.1, from_mm: 10, to_mm: 90 },
    { radius_mm: 40.2, from_mm: 10, to_mm: 90.5 },
    { radius_mm: 21.25, from_mm: 10, to_mm: 52.5 },
  ])("shows $to_mm mm for a radius of $radius_mm mm", ({ radius_mm, ...laid }) => {
    expect(layRule(radius_mm)).toEqual(laid);
  });

  test("tells the radius to a quarter of what lies between its lines", () => {
    fc.assert(
      fc.property(radii, (radius_mm) => {
        expect(Math.abs(radiusBy(layRule(radius_mm)) - radius_mm)).toBeLessThanOrEqual(RULE_STEP_mm / 4 + 1e-9);
      }),
    );
  });

  test("agrees with the true radius and with one a line off, never with one a millimeter off", () => {
    fc.assert(
      fc.property(radii, fc.constantFrom(-1, 1), (radius_mm, way) => {
        const laid = layRule(radius_mm);
        expect(agreesWithRule(radius_mm, laid)).toBe(true);
        expect(agreesWithRule(radiusBy(laid) + way * RULE_STEP_mm, laid)).toBe(true);
        expect(agreesWithRule(radius_mm + way, laid)).toBe(false);
      }),
    );
  });
});
