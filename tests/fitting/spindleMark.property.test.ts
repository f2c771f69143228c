import fc from "fast-check";
import { expect, test } from "vitest";
import { inTheTray } from "../../src/fitting/assembly";
import { voidedBy } from "../../src/fitting/fitChecks";
import { standsOutNow } from "../../src/fitting/fittedLock";
import type { FittingAct } from "../../src/fitting/fittingAct";
import { fittingActSchema } from "../../src/fitting/fittingActSchema";
import { putTogether } from "../../src/fitting/putTogether";
import { after, dialInFor, trainingLock } from "../support/fitter";

const lock = trainingLock(30);
const MARK: FittingAct = { type: "spindle.marked" };
const tray = inTheTray(lock.sizes.spindle_mm);
const withDial = (length_mm: number, gap_mm: number): readonly FittingAct[] => [
  { type: "dial.screwed", by: dialInFor(lock, length_mm, gap_mm) },
];

test("a spindle that is marked at the cam's face and cut to its mark ends there, with the dial at the same gap", () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 90 }), (gap) => {
      const gap_mm = gap / 100;
      const { length_mm } = tray.spindle;
      const marked = after(tray, [{ type: "body.hung" }, ...withDial(length_mm, gap_mm), MARK], lock);
      expect(marked.dialIn).toBeGreaterThan(0);
      const cut_mm = marked.spindle.mark_mm ?? Number.NaN;
      expect(cut_mm).toBeLessThan(length_mm);
      const dressed = after(
        marked,
        [{ type: "dial.taken" }, { type: "spindle.cut", length_mm: cut_mm }, { type: "spindle.dressed" }],
        lock,
      );
      // What was above the mark is sawn off, and the mark with it.
      expect(dressed.spindle.mark_mm).toBeNull();
      const again = after(dressed, withDial(cut_mm, gap_mm), lock);
      expect(standsOutNow(lock, again)).toBeCloseTo(0, 9);
    }),
  );
});

test("a mark outlasts a cut above it, and is not on the spare", () => {
  const marked = after(tray, [{ type: "body.hung" }, ...withDial(140, 0.5), MARK, { type: "dial.taken" }], lock);
  expect(after(marked, [{ type: "spindle.cut", length_mm: 120 }], lock).spindle.mark_mm).toBe(marked.spindle.mark_mm);
  expect(after(marked, [{ type: "spindle.replaced" }], lock).spindle.mark_mm).toBeNull();
});

test("it takes a dial in the cam, no cover, and a spindle that stands out; it makes no check worthless", () => {
  expect(putTogether(tray, MARK, lock).hindrance).toBe("no-dial");
  const inside = after(
    tray,
    [{ type: "body.hung" }, { type: "spindle.cut", length_mm: 87 }, { type: "spindle.dressed" }, ...withDial(87, 0.5)],
    lock,
  );
  expect(putTogether(inside, MARK, lock).hindrance).toBe("ends-inside");
  expect(putTogether(after(inside, [{ type: "cover.put" }], lock), MARK, lock).hindrance).toBe("cover-in-the-way");
  expect(voidedBy(MARK)).toEqual([]);
  expect(fittingActSchema.parse(MARK)).toEqual(MARK);
});
