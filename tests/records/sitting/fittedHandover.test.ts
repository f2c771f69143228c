import { describe, expect, test } from "vitest";
import { HandoverTry } from "../../../src/app/sittings/tries/handoverTry";
import { jobMeasured } from "../../../src/app/verdicts/jobTryWords";
import type { HandoverFit, HandoverTry as Result } from "../../../src/drill/marking/tryResult";
import type { Station } from "../../../src/drill/sheet/sheet";
import { checksOf } from "../../../src/fitting/fitChecks";
import { offsetOf } from "../../../src/fitting/offCenter";
import { drawNewParts, drawTray } from "../../../src/handover/run/begunRun";
import { recordHash } from "../../../src/records/hashedRecord";
import { checkRecord } from "../../../src/records/sitting/checkRecord";
import { recordSchema } from "../../../src/records/sitting/recordSchema";
import { sittingRecord } from "../../../src/records/sitting/sittingRecord";
import { tryMisfit } from "../../../src/records/sitting/tryPlausible";
import { setupOf } from "../../app/sittings/jobTries";
import { checkedInWords } from "../../support/checkedInWords";
import { goodActs } from "../../support/fitter";
import { handoverStation, testSheet } from "../../support/testSheet";
import { handoverTry } from "../../support/testTries";

const VERSION = "0.1.0";
const STATION = handoverStation({ fit: "first", repetitions: 1 });

/** A try whose first spindle is straight, with the seed of its sitting. */
function straight() {
  for (let seed = 1; seed < 100; seed++) {
    const one = new HandoverTry(setupOf(STATION, seed));
    const { tray } = one.session;
    if (tray !== null && offsetOf(tray.assembly.spindle.bend) === 0) return { one, seed, tray };
  }
  throw new Error("no seed gives a straight spindle");
}

/** Fits the lock of a try with every check, its strike by one screw, and ends the try. */
function fitted() {
  const { one, seed, tray } = straight();
  let now = 0;
  one.session.subscribe(() => {
    now += 1000;
    one.worked(now);
  });
  for (const act of goodActs(tray.lock).filter(({ type }) => type !== "strike.tightened")) {
    if (act.type === "cover.put") for (const check of checksOf(tray.assembly)) tray.check(check);
    tray.act(act);
  }
  tray.check("cover");
  const { acts } = tray;
  const said = { isChecked: true, isFaultless: false };
  one.session.act({ type: "lock.fitted", acts, checks: [...checksOf(tray.assembly)], ...said }, now);
  one.end();
  return { one, seed, acts };
}

/** What checking a record comes to whose forger made the marks and the hash anew. */
function verdictOn(seed: number, result: Result, station: Station = STATION): readonly string[] {
  const record = sittingRecord({
    ...{ sheet: testSheet({ stations: [station] }), seed, appVersion: VERSION, person: "Pelline" },
    ...{ startedAt: "2026-11-25T08:00:00.000Z", worked_ms: 5_000_000, pauses: 0, interruptions: 0 },
    ...{ tries: [result], answers: [], ended: "finished" },
  });
  const read = recordSchema.safeParse(JSON.parse(JSON.stringify(record)));
  if (!read.success) return ["not read"];
  expect(read.data).toEqual(record);
  return checkedInWords(checkRecord(record, recordHash(record), VERSION)).problems;
}

describe("a handover of a sitting that begins with its fitting", () => {
  test("has its lock in the tray, and its record makes the fit again", () => {
    const { one, seed, acts } = fitted();
    const result = one.result();
    const checks = result.fit?.checks;
    expect(result.fit).toEqual({
      ...{ isTogether: true, faults: ["strike-by-one-screw"], skipped: [] },
      ...{ partsReplaced: 0, acts, checks },
    });
    expect([checks?.length, one.isBegun]).toEqual([14, true]);
    expect(verdictOn(seed, result)).toEqual([]);
    expect(jobMeasured(result, STATION).faults).toContain("strike hangs by one screw");
  });

  test("where the station does not ask for it, the lock is on its door and the record says nothing of a fit", () => {
    const one = new HandoverTry(setupOf(handoverStation(), 5));
    expect([one.session.tray, "fit" in one.result()]).toEqual([null, false]);
  });

  test("work at the parts counts as work, after the lock was taken apart too", () => {
    const { one } = fitted();
    const before = one.session.version;
    one.session.act({ type: "lock.takenApart" }, 100_000);
    one.session.tray?.act({ type: "strike.tightened" });
    expect(one.session.version).toBeGreaterThan(before + 1);
  });
});

describe("a forged fit is found, marks and hash made anew", () => {
  const { one, seed, acts } = fitted();
  const sound = one.result();
  const forged = (fields: Partial<HandoverFit>): Result => {
    if (sound.fit === undefined) throw new Error("nothing was fitted");
    return { ...sound, fit: { ...sound.fit, ...fields } };
  };
  test.each([
    ["a fault left out", forged({ faults: [] })],
    ["a check that was not made", forged({ checks: ["zero"] })],
    ["skipped checks of checks that were made", forged({ skipped: ["zero"] })],
    ["other parts than the first", forged({ partsReplaced: 1 })],
    ["an act that cannot be done", forged({ acts: [{ type: "key.driven" }, ...acts] })],
    ["no acts at all", forged({ acts: [] })],
    ["a lock in parts that has faults", forged({ isTogether: false })],
    ["a check that there is not on its lock", forged({ checks: ["self-check"] })],
    ["a word less: no fit at all", { ...sound, fit: undefined }],
  ])("%s", (_, one) => {
    expect(verdictOn(seed, one)).not.toEqual([]);
  });

  test("a fit at a station that has its lock on the door", () => {
    expect(tryMisfit(sound, handoverStation())).toMatchObject({ code: "fit-unasked" });
  });

  const signed = { isHandedOver: true, missing: [], undone: 0 } as const;
  test.each([
    { fields: {}, faults: [], code: "fit-fault-unsaid" },
    { fields: { faults: [] }, faults: [{ code: "bad-fit-left" }], code: "fit-fault-unsaid" },
    { fields: { isTogether: false, faults: [] }, faults: [], code: "fit-unfinished" },
    { fields: { skipped: ["zero"] as const, faults: [] }, faults: [], code: "fit-unfinished" },
  ])("handed over with $fields and $faults: $code", ({ fields, faults, code }) => {
    expect(tryMisfit({ ...forged(fields), ...signed, faults }, STATION)).toMatchObject({ code });
  });

  test("a bad fit that is handed over with its fault is as it can be", () => {
    const one = { ...forged({}), ...signed, faults: [{ code: "bad-fit-left" }] };
    expect(tryMisfit(one, STATION)).toBeUndefined();
  });

  test("a record from before, whose station knows of no fit, is as it was", () => {
    expect(tryMisfit(handoverTry(), handoverStation())).toBeUndefined();
  });
});

test("new parts follow from seed and place, and are others than those before", () => {
  const { profile } = setupOf(STATION);
  const drawn = (seed: number) => [drawTray(profile, seed), ...[1, 2, 3].map((k) => drawNewParts(profile, seed, k))];
  expect(drawn(7)).toEqual(drawn(7));
  expect(new Set(drawn(7).map(({ slotAt }) => slotAt)).size).toBeGreaterThan(1);
});
