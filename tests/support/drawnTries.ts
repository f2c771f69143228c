import type { TryResult } from "../../src/drill/marking/tryResult";
import type { Station } from "../../src/drill/sheet/sheet";
import { tryChance } from "../../src/drill/sitting/tryChance";
import { drawInspection } from "../../src/fitting/inspect/drawFit";
import { stationTrouble } from "../../src/handover/trouble/stationTrouble";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { recordHash } from "../../src/records/hashedRecord";
import { checkRecord } from "../../src/records/sitting/checkRecord";
import { recordSchema } from "../../src/records/sitting/recordSchema";
import { sittingRecord } from "../../src/records/sitting/sittingRecord";
import { drawVisit } from "../../src/service/drawVisit";
import { drawSeed } from "../../src/statistics/drawSeed";
import { checkedInWords } from "./checkedInWords";
import { fittingStation, inspectionStation, serviceStation, testSheet, troubleStation } from "./testSheet";
import { fittingTry, inspectionTry, serviceTry, troubleTry } from "./testTries";

/** The version that makes the record. */
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
/** Of the fit that is judged. */
export const { faults: FAULTS } = drawInspection(PROFILE, tryChance(SEED, 1));
/** Of the lock that is served. */
export const { conditions: CONDITIONS } = drawVisit(PROFILE, drawSeed(tryChance(SEED, 2)));
const TROUBLE = troubleStation({ repetitions: 1, passMarks: { right: 1 } });
/** The defect to be found. */
export const { kind: DEFECT } = stationTrouble(PROFILE, TROUBLE, tryChance(SEED, 3)).task.trouble;
const STATIONS: readonly Station[] = [
  fittingStation({ repetitions: 1, passMarks: { right: 1 } }),
  inspectionStation({ repetitions: 1, passMarks: { right: 1 } }),
  serviceStation({ repetitions: 1, passMarks: { right: 1 } }),
  TROUBLE,
];
export const FITTED = fittingTry();
export const JUDGED = inspectionTry({ station: 1, faults: FAULTS, named: FAULTS });
export const SERVED = serviceTry({ station: 2, conditions: CONDITIONS, found: CONDITIONS, acts: 40 });
export const FOUND = troubleTry({ station: 3, condition: DEFECT, named: DEFECT });

/** What checking a record comes to whose forger made the marks and the hash anew. @param version - that checks it */
export function verdictOn(tries: readonly TryResult[], version = VERSION): readonly string[] {
  const record = sittingRecord({
    ...{ sheet: testSheet({ stations: STATIONS }), seed: SEED, appVersion: VERSION, person: "Pelline" },
    ...{ startedAt: "2026-11-25T08:00:00.000Z", worked_ms: 5_000_000, pauses: 0, interruptions: 0 },
    ...{ tries, answers: [], ended: "finished" },
  });
  const read = recordSchema.safeParse(JSON.parse(JSON.stringify(record)));
  if (!read.success) return ["not read"];
  return checkedInWords(checkRecord(record, recordHash(record), version)).problems;
}
