import { createHash } from "node:crypto";
import { sittingWrite } from "../../src/app/sittings/session/sittingLogbook";
import type { KeptRecord } from "../../src/app/verdicts/keptRecord";
import { recordHash } from "../../src/records/hashedRecord";
import type { SittingRecord } from "../../src/records/records";
import { type SittingFacts, sittingRecord } from "../../src/records/sitting/sittingRecord";
import { NOON } from "./logbookRecords";
import { dialingStation, testSheet } from "./testSheet";
import { triesRight } from "./testTries";

/** SHA-256 by another hand than the app's. */
export const sha256 = (text: string) => createHash("sha256").update(text).digest("hex");

/** The record of a finished sitting, four of five tries right unless told otherwise, with its hash. */
export function keptRecord(fields: Partial<SittingFacts> = {}): KeptRecord {
  const record = sittingRecord({
    sheet: testSheet({ stations: [dialingStation({ repetitions: 5, passMarks: { firstTime: 4 } })] }),
    seed: 7,
    appVersion: "0.1.0",
    startedAt: "2026-11-25T08:00:00.000Z",
    worked_ms: 180_000,
    pauses: 0,
    interruptions: 0,
    tries: triesRight(4, 5),
    answers: [],
    ended: "finished",
    ...fields,
  });
  return { id: "one", record, sha256: recordHash(record) };
}

/** A sitting as the logbook has it: the record, and what is stored beside it. */
export function keptSitting(
  id: string,
  fields: Partial<SittingFacts> = {},
  other: Partial<SittingRecord> = {},
): SittingRecord {
  const kept = keptRecord(fields);
  const { record } = sittingWrite({ ...kept, id }, "tavro", NOON + 1000);
  return { ...(record as SittingRecord), ...other };
}
