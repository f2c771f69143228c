import { describe, expect, test } from "vitest";
import { keptTryWrite, tryWrite } from "../../../../src/app/sittings/session/sittingLogbook";
import { ServiceTry } from "../../../../src/app/sittings/tries/serviceTry";
import { jobMeasured } from "../../../../src/app/verdicts/jobTryWords";
import { isRight } from "../../../../src/drill/marking/tryResult";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { tryMisfit } from "../../../../src/records/sitting/tryPlausible";
import { trySchema } from "../../../../src/records/sitting/trySchemas";
import { visitTo } from "../../../../src/service/visit";
import { checkWrite } from "../../../../src/store/logbookWrite";
import { serve } from "../../../support/technician";
import { serviceStation } from "../../../support/testSheet";
import { serviceTry } from "../../../support/testTries";
import { setupOf } from "../jobTries";

const STATION = serviceStation({ help: "silent", timeLimit_s: 60 });
const OWNER = { sittingId: "sitting", personId: "tavro", index: 3, now_ms: 1_000_000 };

/** A try that hears of all that is done, a second each. */
function inHand() {
  const one = new ServiceTry(setupOf(STATION));
  let now = 0;
  one.session.subscribe(() => {
    now += 1000;
    one.worked(now);
  });
  const plan = visitTo(shippedProfile("three-wheel"), one.session.setup.seed);
  serve(plan);
  const acts = plan.done.map(({ act }) => act);
  return { one, acts, workWell: () => acts.forEach((act) => void one.session.act(act)) };
}

describe("a service visit in a sitting", () => {
  test("ends when the site is left, and is right where nothing was left out", () => {
    const { one, acts, workWell } = inHand();
    workWell();
    expect(one.isEnded).toBe(false);
    one.session.leave();
    expect(one.isEnded).toBe(true);
    const result = one.result();
    expect(result).toMatchObject({ isLeft: true, faults: [], acts: acts.length, time_ms: acts.length * 1000 });
    expect(isRight(result, STATION)).toBe(true);
    expect(isRight({ ...result, time_ms: 60_001 }, STATION)).toBe(false);
    expect(trySchema.safeParse(result).success).toBe(true);
    expect(tryMisfit(result, STATION)).toBeUndefined();
  });

  test("is a job of the sitting, the same but for its seed when it is taken from its result", () => {
    const { one, acts } = inHand();
    for (const act of acts.slice(2)) one.session.act(act);
    one.session.leave();
    const write = tryWrite(one, OWNER);
    expect(() => checkWrite(write)).not.toThrow();
    const { seed } = one.session.setup;
    expect(write.record).toMatchObject({
      ...{ id: "sitting:4", kind: "service", sittingId: "sitting", help: "silent", isRight: false },
      ...{ missed: ["not-asked"], details: { seed } },
    });
    const kept = keptTryWrite(one.setup, one.result(), { motion: null }, OWNER);
    expect(kept?.record).toEqual({ ...write.record, details: { ...Object(Object(write.record).details), seed: null } });
    expect(jobMeasured(one.result(), STATION)).toMatchObject({ outcome: "visit ended", faults: "holder not asked" });
  });

  test("that the candidate ends is not right, whatever was done", () => {
    const { one, workWell } = inHand();
    workWell();
    one.end();
    expect(one.result()).toMatchObject({ isLeft: false, faults: [] });
    expect(isRight(one.result(), STATION)).toBe(false);
    expect(tryWrite(one, OWNER).record).toMatchObject({ isRight: false, missed: ["not-left"] });
    expect(jobMeasured({ ...one.result(), time_ms: 61_000 }, STATION).outcome).toBe("not ended, too late");
  });

  test("after a reload is the one it would have been", () => {
    const seeds = [0, 1, 2].map(() => new ServiceTry(setupOf(STATION)).session.setup.seed);
    expect(new Set(seeds).size).toBe(1);
  });
});

const NOT_LOOKED = { code: "look-left-out", about: "way-out" } as const;

describe("a service visit on record", () => {
  test.each([
    { forged: serviceTry({ faults: [NOT_LOOKED, NOT_LOOKED] }), code: "fault-twice" },
    { forged: serviceTry({ conditions: ["bolt-drags", "bolt-drags"] }), code: "defect-twice" },
    { forged: serviceTry({ conditions: ["batteries-low"], found: ["batteries-low"] }), code: "cells-of-wheel-pack" },
    { forged: serviceTry({ conditions: ["bolt-drags"] }), code: "other-told" },
    { forged: serviceTry({ acts: 23 }), code: "served-idle" },
    { forged: serviceTry({ time_ms: 0 }), code: "in-no-time" },
    { forged: serviceTry({ isBrokenOff: true }), code: "lost-with-result" },
  ])("cannot be: $code", ({ forged, code }) => {
    expect(tryMisfit(serviceTry(), STATION)).toBeUndefined();
    expect(tryMisfit(forged, STATION)).toMatchObject({ code });
  });

  test.each([
    { faults: [{ code: "paint-wet", about: null }] },
    { faults: [{ code: "look-left-out", about: "taste" }] },
    { faults: [{ code: "no-record", about: "ring" }] },
    { conditions: ["haunted"] },
    { found: Array.from({ length: 30 }, () => "bolt-drags") },
    { acts: 2.5 },
    { isLeft: "yes" },
  ])("is not read with %j", (fields) => {
    expect(trySchema.safeParse(serviceTry({ faults: [NOT_LOOKED] })).success).toBe(true);
    expect(trySchema.safeParse({ ...serviceTry(), ...fields }).success).toBe(false);
  });
});
