import { readSittingRecord } from "../../records/sitting/readSittingRecord";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import { type Receipt, signedReceipt } from "../../school/signing/receipt";
import { statedSitting } from "../sittings/statedSitting";
import type { World } from "../world/world";
import { signingKey } from "./schoolKeys";

/** The file of a sitting's record, with what the server states of it. */
export interface SignedFile {
  readonly sha256: string;
  readonly record: unknown;
  readonly receipt: Receipt;
}

/**
 * The record of a sitting as a file that anyone can check, signed by the school.
 *
 * @throws {SchoolError} "no-such-thing" where the school has no such sitting
 */
export async function signedRecord(schoolId: string, recordId: string, world: World): Promise<SignedFile> {
  const row = await world.database
    .selectFrom("records")
    .innerJoin("schools", "schools.id", "records.school_id")
    .innerJoin("people", (join) =>
      join.onRef("people.school_id", "=", "records.school_id").onRef("people.id", "=", "records.person_id"),
    )
    .innerJoin("chain", (join) =>
      join.onRef("chain.school_id", "=", "records.school_id").onRef("chain.place", "=", "records.place"),
    )
    .select(["records.id", "kind", "body", "received_at", "records.place", "records.sha256", "link"])
    .select(["schools.name as school", "people.name as person", "person_id"])
    .where("records.school_id", "=", schoolId)
    .where("records.id", "=", recordId)
    .where("kind", "=", "sittings")
    .executeTakeFirst();
  if (row === undefined) throw new SchoolError(schoolProblem("no-such-thing", []));
  const { record, sha256 } = readSittingRecord(JSON.parse(row.body).body);
  const sitting = await statedSitting(schoolId, recordId, world);
  const facts = {
    school: { id: schoolId, name: row.school },
    person: { id: row.person_id, name: row.person },
    record: { kind: row.kind, id: row.id, sha256: sha256.trim().toLowerCase() },
    receivedAt: new Date(row.received_at).toISOString(),
    chain: { place: row.place, sha256: row.sha256, link: row.link },
    ...(sitting !== null && { sitting }),
    appVersion: world.appVersion,
  };
  return { sha256, record, receipt: signedReceipt(facts, await signingKey(schoolId, world)) };
}
