import { describe, expect, test } from "vitest";
import { keptTryWrite, tryWrite } from "../../../../src/app/sittings/session/sittingLogbook";
import { FittingTry } from "../../../../src/app/sittings/tries/fittingTry";
import { jobMeasured } from "../../../../src/app/verdicts/jobTryWords";
import { isRight } from "../../../../src/drill/marking/tryResult";
import { checksOf } from "../../../../src/fitting/fitChecks";
import { tryMisfit } from "../../../../src/records/sitting/tryPlausible";
import { trySchema } from "../../../../src/records/sitting/trySchemas";
import { checkWrite } from "../../../../src/store/logbookWrite";
import { goodActs } from "../../../support/fitter";
import { fittingStation } from "../../../support/testSheet";
import { fittingTry } from "../../../support/testTries";
import { setupOf } from "../jobTries";

const STATION = fittingStation({ help: "silent", timeLimit_s: 60 });
const OWNER = { sittingId: "sitting", personId: "tavro", index: 3, now_ms: 1_000_000 };

/** A try that hears of all that is done, a second each. */
function inHand() {
  const one = new FittingTry(setupOf(STATION));
  let now = 0;
  one.session.subscribe(() => {
    now += 1000;
    one.worked(now);
  });
  const acts = [{ type: "spindle.replaced" } as const, ...goodActs(one.session.lock)];
  return { one, acts, fitWell: () => acts.forEach((act) => void one.session.act(act)) };
}

describe("a fitting in a sitting", () => {
  test("ends with the word that the dial is fitted, and is right where nothing is wrong", () => {
    const { one, acts, fitWell } = inHand();
    fitWell();
    one.session.check("zero");
    expect(one.isEnded).toBe(false);
    one.session.declare();
    expect(one.isEnded).toBe(true);
    const result = one.result();
    expect(result).toMatchObject({ declared: "closed", faults: [], moves: acts.length, spindlesUsed: 1 });
    expect(result).toMatchObject({
      skipped: checksOf(one.session.assembly).filter((check) => check !== "zero"),
      time_ms: (acts.length + 1) * 1000,
    });
    expect(isRight(result, STATION)).toBe(true);
    expect(isRight({ ...result, time_ms: 60_001 }, STATION)).toBe(false);
    expect(trySchema.safeParse(result).success).toBe(true);
    expect(tryMisfit(result, STATION)).toBeUndefined();
  });

  test("is a job of the sitting, the same when it is taken from its result", () => {
    const { one, fitWell } = inHand();
    fitWell();
    for (const type of ["cover.taken", "key.taken", "key.put", "cover.put"] as const) one.session.act({ type });
    one.session.declare();
    const write = tryWrite(one, OWNER);
    expect(() => checkWrite(write)).not.toThrow();
    expect(write.record).toMatchObject({
      ...{ id: "sitting:4", kind: "fitting", sittingId: "sitting", help: "silent", isRight: false },
      missed: ["key-not-seated", "key-screw-loose"],
    });
    expect(keptTryWrite(one.setup, one.result(), { motion: null }, OWNER)).toEqual(write);
    expect(jobMeasured(one.result(), STATION)).toEqual({
      outcome: "fitted",
      stops: "20 acts, 1 spindle used up, 14 checks skipped",
      faults: "the key is not driven home; the key's screw is loose",
    });
  });

  test("that the candidate ends is not right, whatever it is like", () => {
    const { one, fitWell } = inHand();
    fitWell();
    one.end();
    expect(one.result()).toMatchObject({ declared: null, faults: [] });
    expect(isRight(one.result(), STATION)).toBe(false);
    expect(tryWrite(one, OWNER).record).toMatchObject({ isRight: false, missed: ["not-declared"] });
    expect(jobMeasured({ ...one.result(), time_ms: 61_000 }, STATION).outcome).toBe("not said to be fitted, too late");
  });

  test("with spoiled parts says so", () => {
    expect(jobMeasured(fittingTry({ declared: "spent", time_ms: 9000 }), STATION).outcome).toBe("parts spoiled");
  });
});

describe("a fitting on record", () => {
  test.each([
    { forged: fittingTry({ faults: [{ code: "rubs" }, { code: "rubs" }] }), code: "fault-twice" },
    { forged: fittingTry({ skipped: ["bolt", "bolt"] }), code: "check-twice" },
    { forged: fittingTry({ declared: "apart" }), code: "declared-apart" },
    { forged: fittingTry({ moves: 3 }), code: "fitted-unmoved" },
    { forged: fittingTry({ time_ms: 0 }), code: "in-no-time" },
    { forged: fittingTry({ isBrokenOff: true }), code: "lost-with-result" },
  ])("cannot be: $code", ({ forged, code }) => {
    expect(tryMisfit(forged, STATION)).toMatchObject({ code });
  });

  test.each([
    { faults: [{ code: "paint-wet" }] },
    { skipped: ["taste"] },
    { moves: 2.5 },
    { spindlesUsed: 2 },
    { declared: "perfect" },
  ])("is not read with %j", (fields) => {
    expect(trySchema.safeParse(fittingTry()).success).toBe(true);
    expect(trySchema.safeParse({ ...fittingTry(), ...fields }).success).toBe(false);
  });
});
