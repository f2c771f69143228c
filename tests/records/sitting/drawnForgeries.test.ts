import { describe, expect, test } from "vitest";
import type { TryResult } from "../../../src/drill/marking/tryResult";
import type { Station } from "../../../src/drill/sheet/sheet";
import { tryChance } from "../../../src/drill/sitting/tryChance";
import { drawInspection } from "../../../src/fitting/inspect/drawFit";
import { stationTrouble } from "../../../src/handover/trouble/stationTrouble";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { recordHash } from "../../../src/records/hashedRecord";
import { checkRecord } from "../../../src/records/sitting/checkRecord";
import { recordSchema } from "../../../src/records/sitting/recordSchema";
import { sittingRecord } from "../../../src/records/sitting/sittingRecord";
import { drawVisit } from "../../../src/service/drawVisit";
import { drawSeed } from "../../../src/statistics/drawSeed";
import { checkedInWords } from "../../support/checkedInWords";
import { fittingStation, inspectionStation, serviceStation, testSheet, troubleStation } from "../../support/testSheet";
import { fittingTry, inspectionTry, serviceTry, troubleTry } from "../../support/testTries";

const VERSION = "0.1.0";
const PROFILE = shippedProfile("three-wheel");

/** A seed whose fit has two faults and whose visit has two conditions. */
function seedOf(): number {
  for (let seed = 1; seed < 1000; seed++) {
    const { faults } = drawInspection(PROFILE, tryChance(seed, 1));
    const { conditions } = drawVisit(PROFILE, drawSeed(tryChance(seed, 2)));
    if (faults.length === 2 && conditions.length === 2) return seed;
  }
  throw new Error("no seed gives such locks");
}

const SEED = seedOf();
const { faults: FAULTS } = drawInspection(PROFILE, tryChance(SEED, 1));
const { conditions: CONDITIONS } = drawVisit(PROFILE, drawSeed(tryChance(SEED, 2)));
const TROUBLE = troubleStation({ repetitions: 1, passMarks: { right: 1 } });
const { kind: DEFECT } = stationTrouble(PROFILE, TROUBLE, tryChance(SEED, 3)).task.trouble;
const STATIONS: readonly Station[] = [
  fittingStation({ repetitions: 1, passMarks: { right: 1 } }),
  inspectionStation({ repetitions: 1, passMarks: { right: 1 } }),
  serviceStation({ repetitions: 1, passMarks: { right: 1 } }),
  TROUBLE,
];
const FITTED = fittingTry();
const JUDGED = inspectionTry({ station: 1, faults: FAULTS, named: FAULTS });
const SERVED = serviceTry({ station: 2, conditions: CONDITIONS, found: CONDITIONS, acts: 40 });
const FOUND = troubleTry({ station: 3, condition: DEFECT, named: DEFECT });

/** What checking a record comes to whose forger made the marks and the hash anew. @param version - that checks it */
function verdictOn(tries: readonly TryResult[], version = VERSION): readonly string[] {
  const record = sittingRecord({
    ...{ sheet: testSheet({ stations: STATIONS }), seed: SEED, appVersion: VERSION, person: "Pelline" },
    ...{ startedAt: "2026-11-25T08:00:00.000Z", worked_ms: 5_000_000, pauses: 0, interruptions: 0 },
    ...{ tries, answers: [], ended: "finished" },
  });
  const read = recordSchema.safeParse(JSON.parse(JSON.stringify(record)));
  if (!read.success) return ["not read"];
  return checkedInWords(checkRecord(record, recordHash(record), version)).problems;
}

test("the record that forgeries are made of is sound", () => {
  expect(verdictOn([FITTED, JUDGED, SERVED, FOUND])).toEqual([]);
});

const [FIRST, ...REST] = CONDITIONS;
const ELSE = (["key-loose", "bolt-drags", "ring-dirty"] as const).filter((one) => !CONDITIONS.includes(one));
const NOT_PROVED = { code: "not-proved", about: null } as const;
const missed = (about: (typeof CONDITIONS)[number]) => ({ code: "missed-in-record", about }) as const;

describe("a forged try is found, marks and hash made anew", () => {
  test.each([
    ["a fit with fewer faults than were drawn", { ...JUDGED, faults: FAULTS.slice(1), named: FAULTS.slice(1) }],
    ["a fit with no faults", { ...JUDGED, faults: [], named: [] }],
    ["a fit with faults in another order", { ...JUDGED, faults: FAULTS.toReversed() }],
    ["a fault named that its lock cannot have", { ...JUDGED, named: [...FAULTS, "fuse-blown" as const] }],
    ["a check skipped that its lock does not have", { ...JUDGED, skipped: ["self-check" as const] }],
    ["a fault named twice", { ...JUDGED, named: [...FAULTS, ...FAULTS] }],
    ["an answer in no time", { ...JUDGED, time_ms: 0 }],
  ])("%s", (_, forged) => {
    expect(verdictOn([FITTED, forged, SERVED, FOUND])).not.toEqual([]);
  });

  test.each([
    ["a lock with fewer conditions than were drawn", { ...SERVED, conditions: REST, found: REST }],
    ["a lock with nothing wrong", { ...SERVED, conditions: [], found: [] }],
    ["a lock with other conditions", { ...SERVED, conditions: ELSE, found: ELSE }],
    ["a condition that was not written down, and no fault of it", { ...SERVED, found: REST, faults: [NOT_PROVED] }],
    ["a condition invented, and no fault of it", { ...SERVED, found: [...CONDITIONS, ...ELSE], faults: [NOT_PROVED] }],
    ["a fault of what was written down", { ...SERVED, faults: FIRST === undefined ? [] : [missed(FIRST)] }],
    ["something found without a record", { ...SERVED, faults: [{ code: "no-record" as const, about: null }] }],
    [
      "left wrong what was not wrong",
      { ...SERVED, faults: ELSE.slice(0, 1).map((about) => ({ code: "left-wrong" as const, about })) },
    ],
    [
      "made wrong what was wrong",
      { ...SERVED, faults: CONDITIONS.slice(0, 1).map((about) => ({ code: "made-wrong" as const, about })) },
    ],
    [
      "batteries measured on a wheel pack",
      { ...SERVED, faults: [{ code: "not-measured" as const, about: "battery" as const }] },
    ],
    ["a static strap for a wheel pack", { ...SERVED, faults: [{ code: "cover-without-strap" as const, about: null }] }],
    ["a good visit in too few acts", { ...SERVED, acts: 12 }],
  ])("%s", (_, forged) => {
    expect(verdictOn([FITTED, JUDGED, forged, FOUND])).not.toEqual([]);
  });

  test.each([
    ["a fault that its lock cannot have", { ...FITTED, faults: [{ code: "battery-missing" as const }] }],
    ["a check skipped that its lock does not have", { ...FITTED, skipped: ["wires" as const] }],
    ["fitted with hardly a part moved", { ...FITTED, moves: 3 }],
    ["fitted with parts in the tray", { ...FITTED, declared: "apart" as const }],
    [
      "faults of a fit that never was together",
      { ...FITTED, declared: null, moves: 2, faults: [{ code: "rubs" as const }] },
    ],
  ])("%s", (_, forged) => {
    expect(verdictOn([forged, JUDGED, SERVED, FOUND])).not.toEqual([]);
  });

  const OTHER = DEFECT === "wheel-off" ? "index-slipped" : "wheel-off";
  test.each([
    ["another defect than was drawn", { ...FOUND, condition: OTHER, named: OTHER }],
    ["a defect that its lock cannot have", { ...FOUND, condition: "zero-never-set", named: "zero-never-set" }],
    ["another defect, and it was not found", { ...FOUND, condition: OTHER, isNamedRight: false, sizeError: null }],
  ] as const)("%s", (_, forged) => {
    const says = "Try 4 has another defect than sheet and seed lead to.";
    expect(verdictOn([FITTED, JUDGED, SERVED, forged])).toContain(says);
    expect(verdictOn([FITTED, JUDGED, SERVED, forged], "9.9.9")).not.toContain(says);
  });
});
