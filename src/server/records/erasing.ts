import type * as z from "zod/mini";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import { type erasedReceipt, STAYS_OF_ERASED } from "../../school/wire/recordsWire";
import { writeAudit } from "../audit/writeAudit";
import { holdChain } from "../chain/schoolChain";
import type { AskingInstructor } from "../http/whoAsks";
import { eraseSittings } from "../sittings/forgetSittings";
import type { World } from "../world/world";
import { deleteRecords } from "./deletions";

/** Name of somebody whose data was erased. */
const NOBODY = "Erased person";

/**
 * Erases a person on request: every record with its edits and motions, the name, the PIN, the cards. What stays, and must be
 * told, is in the answer (`ERASED_WORDS`).
 *
 * @throws {SchoolError} "no-such-thing"
 */
export function erasePerson(
  personId: string,
  { schoolId, instructorId }: AskingInstructor,
  { database, now }: World,
): Promise<z.infer<typeof erasedReceipt>> {
  const at = now();
  return database.transaction().execute(async (held) => {
    // Before the person, as whoever receives records does.
    const chain = await holdChain(held, schoolId);
    const { numUpdatedRows } = await held
      .updateTable("people")
      .set((of) => ({
        name: NOBODY,
        pin_hash: null,
        extra_time: 0,
        erased_at: at,
        updated_at: at,
        version: of("version", "+", 1),
      }))
      .where("school_id", "=", schoolId)
      .where("id", "=", personId)
      .where("erased_at", "is", null)
      .where("merged_into", "is", null)
      .executeTakeFirst();
    await held
      .updateTable("people")
      .set({ name: NOBODY, erased_at: at })
      .where("school_id", "=", schoolId)
      .where("merged_into", "=", personId)
      .execute();
    if (numUpdatedRows === 0n) throw new SchoolError(schoolProblem("no-such-thing", []));
    const records = await held
      .selectFrom("records")
      .select(["id", "kind"])
      .where("school_id", "=", schoolId)
      .where("person_id", "=", personId)
      .orderBy("place")
      .execute();
    await deleteRecords(held, chain, records, { byId: instructorId, at });
    await eraseSittings(held, schoolId, personId);
    // Off every bench: none speaks for them any more. That they joined there stays, so that what comes late is known as theirs.
    await held
      .updateTable("device_people")
      .set({ left_at: at })
      .where("school_id", "=", schoolId)
      .where("person_id", "=", personId)
      .where("left_at", "is", null)
      .execute();
    for (const table of ["cards", "class_people", "live_hands"] as const) {
      await held.deleteFrom(table).where("school_id", "=", schoolId).where("person_id", "=", personId).execute();
    }
    // What was written of changes to this person may have the name in it.
    await held
      .updateTable("audit")
      .set({ details: "{}" })
      .where("school_id", "=", schoolId)
      .where("of_id", "=", personId)
      .execute();
    const details = { records: records.length };
    await writeAudit(held, { schoolId, byId: instructorId, at, action: "person.erased", ofId: personId, details });
    return { records: records.length, stays: [...STAYS_OF_ERASED] };
  });
}
