import { createHash } from "node:crypto";
import type { KeptRecord } from "../../src/app/sittings/sittingShelf";
import { recordHash, sittingRecord } from "../../src/drill/sittingRecord";
import { dialingStation, testSheet } from "./testSheet";
import { triesRight } from "./testTries";

/** SHA-256 by another hand than the app's. */
export const sha256 = (text: string) => createHash("sha256").update(text).digest("hex");

/** The record of a finished sitting, four of five tries right, with its hash. */
export async function keptRecord(): Promise<KeptRecord> {
  const record = await sittingRecord(
    {
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
    },
    sha256,
  );
  return { id: "one", record, sha256: await recordHash(record, sha256) };
}
