import { describe, expect, test } from "vitest";
import { keptTryWrite, tryWrite } from "../../../../src/app/sittings/session/sittingLogbook";
import { InspectionTry } from "../../../../src/app/sittings/tries/inspectionTry";
import { jobMeasured } from "../../../../src/app/verdicts/jobTryWords";
import { isRight } from "../../../../src/drill/marking/tryResult";
import { checksOf } from "../../../../src/fitting/fitChecks";
import { FIT_FAULTS } from "../../../../src/fitting/fitFaultCode";
import { tryMisfit } from "../../../../src/records/sitting/tryPlausible";
import { trySchema } from "../../../../src/records/sitting/trySchemas";
import { checkWrite } from "../../../../src/store/logbookWrite";
import { inspectionStation } from "../../../support/testSheet";
import { inspectionTry } from "../../../support/testTries";
import { setupOf } from "../jobTries";

const STATION = inspectionStation({ timeLimit_s: 60 });
const OWNER = { sittingId: "sitting", personId: "tavro", index: 3, now_ms: 1_000_000 };

/** A try that hears of all that is done, a second each. @param isFaulty - whether anything is wrong with its fit */
function inHand(isFaulty: boolean) {
  for (let seed = 1; seed < 100; seed++) {
    const one = new InspectionTry(setupOf(STATION, seed));
    if (one.session.result.faults.length > 0 !== isFaulty) continue;
    let now = 0;
    one.session.subscribe(() => {
      now += 1000;
      one.worked(now);
    });
    return { one, checkAll: () => checksOf(one.session.assembly).forEach((check) => void one.session.check(check)) };
  }
  throw new Error("no seed gives such a fit");
}

describe("a fit to be judged in a sitting", () => {
  test("is another one for another seed, and the same for the same", () => {
    const faults = (seed: number) => new InspectionTry(setupOf(STATION, seed)).result().faults;
    expect(faults(3)).toEqual(faults(3));
    const kinds = new Set(Array.from({ length: 30 }, (_, seed) => faults(seed).join()));
    expect(kinds.size).toBeGreaterThan(10);
  });

  test("ends with the answer, and is right where that is all that is wrong", () => {
    const { one, checkAll } = inHand(true);
    const { faults } = one.session.result;
    checkAll();
    expect(one.isEnded).toBe(false);
    one.session.name(faults);
    expect(one.isEnded).toBe(true);
    const result = one.result();
    const checks = checksOf(one.session.assembly).length;
    expect(result).toMatchObject({ faults, named: faults, skipped: [], time_ms: checks * 1000 });
    expect(isRight(result, STATION)).toBe(true);
    expect(isRight({ ...result, time_ms: 60_001 }, STATION)).toBe(false);
    expect(trySchema.safeParse(result).success).toBe(true);
    expect(tryMisfit(result, STATION)).toBeUndefined();
  });

  test("that is answered before anything is checked took no time, and its record is sound", () => {
    const { one } = inHand(true);
    one.session.name([]);
    expect(one.result()).toMatchObject({ named: [], time_ms: 0 });
    expect(tryMisfit(one.result(), STATION)).toBeUndefined();
    expect(tryMisfit({ ...one.result(), skipped: [] }, STATION)).toMatchObject({ code: "in-no-time" });
  });

  test("that is good is judged right by every check and the word that nothing is wrong", () => {
    const { one, checkAll } = inHand(false);
    checkAll();
    one.session.name([]);
    expect(isRight(one.result(), STATION)).toBe(true);
    const { one: guessed } = inHand(false);
    guessed.session.name([]);
    expect(isRight(guessed.result(), STATION)).toBe(false);
    expect(jobMeasured(guessed.result(), STATION).faults).toBe("a guess: not checked");
  });

  test("is a job of the sitting, the same when it is taken from its result", () => {
    const { one, checkAll } = inHand(true);
    const { faults } = one.session.result;
    const wrong = FIT_FAULTS.filter((fault) => !faults.includes(fault)).slice(0, 1);
    checkAll();
    one.session.name(wrong);
    const write = tryWrite(one, OWNER);
    expect(() => checkWrite(write)).not.toThrow();
    expect(write.record).toMatchObject({
      ...{ id: "sitting:4", kind: "inspection", sittingId: "sitting", help: "silent", isRight: false },
      missed: [...faults.map((fault) => `overlooked-${fault}`), ...wrong.map((fault) => `unfounded-${fault}`)],
    });
    expect(keptTryWrite(one.setup, one.result(), { motion: null }, OWNER)).toEqual(write);
    const words = jobMeasured(one.result(), STATION);
    expect(words.outcome).toMatch(/^\d faults? to find, 1 named$/);
    expect(words.stops).toBe("0 checks skipped");
    expect(words.faults).toMatch(/^overlooked: .*; named, but not wrong: /);
  });

  test("that the candidate ends without an answer is not right, whatever it is like", () => {
    const { one, checkAll } = inHand(false);
    checkAll();
    one.end();
    expect(isRight(one.result(), STATION)).toBe(false);
    expect(tryWrite(one, OWNER).record).toMatchObject({ isRight: false, missed: ["no-answer"] });
    expect(jobMeasured({ ...one.result(), time_ms: 61_000 }, STATION).outcome).toBe("no answer, too late");
  });
});

describe("a fit that was judged, on record", () => {
  test.each([
    { forged: inspectionTry({ faults: ["rubs", "rubs"] }), code: "fault-twice" },
    { forged: inspectionTry({ named: ["rubs", "rubs"] }), code: "fault-twice" },
    { forged: inspectionTry({ skipped: ["bolt", "bolt"] }), code: "check-twice" },
    { forged: inspectionTry({ time_ms: 0 }), code: "in-no-time" },
    { forged: inspectionTry({ isBrokenOff: true }), code: "lost-with-result" },
  ])("cannot be: $code", ({ forged, code }) => {
    expect(tryMisfit(forged, STATION)).toMatchObject({ code });
  });

  test.each([{ faults: ["paint-wet"] }, { named: ["paint-wet"] }, { skipped: ["taste"] }])(
    "is not read with %j",
    (fields) => {
      expect(trySchema.safeParse(inspectionTry()).success).toBe(true);
      expect(trySchema.safeParse({ ...inspectionTry(), ...fields }).success).toBe(false);
    },
  );
});
