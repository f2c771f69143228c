import { sittingWrite } from "../../src/app/sittings/session/sittingLogbook";
import { canonicalJson } from "../../src/drill/canonicalJson";
import { DEMO_SEED, demoLogbook } from "../../src/progress/demo/demoLogbook";
import { writeLogbookFile } from "../../src/records/file/logbookFile";
import type { SittingRecord } from "../../src/records/records";
import type { Chance } from "../../src/statistics/chance";
import { sha256 } from "../support/keptRecord";
import { aPerson, NOON } from "../support/logbookRecords";
import { satRecord } from "../support/satRecord";
import { someErrors } from "./forgery";
import type { Json } from "./tamper";

/** An export with one sitting and some attempts of one person, as an honest browser writes it. */
export async function exportedBook(chance: Chance): Promise<Json> {
  const { records, traces } = demoLogbook(DEMO_SEED, NOON);
  const record = satRecord(someErrors(chance), Math.floor(1000 * chance()));
  const kept = { id: "sat", record, sha256: sha256(canonicalJson(record)) };
  const sitting = sittingWrite(kept, "tavro", NOON).record as SittingRecord;
  const from = Math.floor(chance() * (records.attempts.length - 4));
  const attempts = records.attempts.slice(from, from + 4).map((one) => ({ ...one, personId: "tavro" }));
  const none = { zeroings: [], jobs: [], sheets: [], settings: [], declarations: [], handoverRuns: [] };
  const people = [aPerson("tavro", { name: "Tavro" })];
  const book = { records: { ...none, people, attempts, sittings: [sitting] }, traces };
  return JSON.parse(writeLogbookFile(book, NOON)) as Json;
}
