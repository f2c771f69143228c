import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  agreesWithGauge,
  outBy,
  setDepthGauge,
  VERNIER,
  VERNIER_mm,
} from "../../../src/fitting/instruments/depthGauge";

const outs = fc.integer({ min: -60, max: 2900 }).map((tenths) => tenths / 10);

describe("a depth gauge over a spindle's end", () => {
  test("stands on a block higher than the spindle, and block less scale is what stands out", () => {
    fc.assert(
      fc.property(outs, (out_mm) => {
        const set = setDepthGauge(out_mm);
        expect(set.block_mm).toBeGreaterThan(out_mm);
        expect(outBy(set)).toBeCloseTo(out_mm, 9);
        expect(set.whole_mm + set.line / 10).toBeCloseTo(set.depth_mm, 9);
      }),
    );
  });

  test("shows its tenths by the one line of the vernier that meets a line of the scale", () => {
    fc.assert(
      fc.property(outs, (out_mm) => {
        const { depth_mm, line } = setDepthGauge(out_mm);
        const off = Array.from({ length: VERNIER.lines }, (_, k) => {
          const at = depth_mm + (VERNIER.long_mm / VERNIER.lines) * k;
          return Math.abs(at - Math.round(at));
        });
        expect(off.indexOf(Math.min(...off))).toBe(line);
        expect(off.filter((one) => one < VERNIER_mm / 2)).toHaveLength(1);
      }),
    );
  });

  test.each([
    [0.4, 0.4, true],
    [0.4, 0.5, true],
    [0.4, 0.3, true],
    [0.4, 0.6, false],
    [-1.2, -1.2, true],
    [-1.2, 1.2, false],
  ])("with %f mm out, a reading of %f mm agrees: %s", (out_mm, own_mm, agrees) => {
    expect(agreesWithGauge(own_mm, setDepthGauge(out_mm))).toBe(agrees);
  });
});
