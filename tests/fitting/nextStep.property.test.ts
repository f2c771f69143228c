import fc from "fast-check";
import { expect, test } from "vitest";
import { inTheTray } from "../../src/fitting/assembly";
import { NEW_BOARD } from "../../src/fitting/board";
import { checksOf } from "../../src/fitting/fitChecks";
import { fitFaults } from "../../src/fitting/fitFault";
import { stageOf } from "../../src/fitting/fitStage";
import type { FittingAct } from "../../src/fitting/fittingAct";
import { CENTERED } from "../../src/fitting/offCenter";
import { putTogether } from "../../src/fitting/putTogether";
import { fitted, trainingLock } from "../support/fitter";
import { followed, PLAIN } from "../support/helpFollowed";

const ANY_ACT: fc.Arbitrary<FittingAct> = fc.oneof(
  fc.constantFrom<FittingAct>(
    ...Object.values(PLAIN).map((type) => ({ type }) as FittingAct),
    { type: "washers.put", washers: [] },
    { type: "washers.put", washers: ["spring", "flat", "flat"] },
    { type: "ring.put", offset: CENTERED, turned: 0.5 },
    { type: "ring.put", offset: { x_mm: 0.9, y_mm: -0.4 }, turned: 2 },
    { type: "key.screwed", torque_Nm: 0.2 },
    { type: "key.screwed", torque_Nm: 1.2 },
    { type: "key.screwed", torque_Nm: 0.6 },
    { type: "locker.dropped", at: "spindle-thread" },
    { type: "locker.dropped", at: "key-screw" },
    { type: "strike.hung", above_mm: 2.5 },
    { type: "strap.taken" },
    { type: "cable.plugged", luck: 0 },
    { type: "battery.connected", leads: "reversed", luck: 0.1 },
    { type: "battery.connected", leads: "right", luck: 0.9 },
  ),
  fc.record({ type: fc.constant("spindle.cut" as const), length_mm: fc.double({ min: 60, max: 120, noNaN: true }) }),
  fc.record({ type: fc.constant("dial.screwed" as const), by: fc.integer({ min: -300, max: 9000 }) }),
);

test("whoever follows the help from any lock ends with every check made and nothing wrong, or is told that parts are spoiled", () => {
  fc.assert(
    fc.property(
      fc.nat(99),
      fc.boolean(),
      fc.constantFrom(CENTERED, { x_mm: 0.5, y_mm: 0 }),
      fc.array(ANY_ACT, { maxLength: 30 }),
      (slotAt, isElectronic, bend, acts) => {
        const lock = { ...trainingLock(slotAt), isElectronic };
        const tray = inTheTray(lock.sizes.spindle_mm, bend, isElectronic ? NEW_BOARD : null);
        const start = acts.reduce((now, act) => putTogether(now, act, lock).assembly, tray);
        const { now, end, checks } = followed(start, lock);
        expect(end).toBe(stageOf(start, lock) === "spent" ? "start-again" : "declare");
        if (end !== "declare") return;
        expect(fitFaults(fitted(now, lock), now, lock.sizes)).toEqual([]);
        expect([...checks].sort()).toEqual([...checksOf(now)].sort());
      },
    ),
    { numRuns: 1500 },
  );
});
