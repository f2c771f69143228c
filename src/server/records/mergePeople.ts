import type { Transaction } from "kysely";
import type * as z from "zod/mini";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { mergedReceipt } from "../../school/wire/rosterWire";
import { writeAudit } from "../audit/writeAudit";
import { holdChain } from "../chain/schoolChain";
import type { Tables } from "../database/tables/tables";
import { sumUpAnew } from "../desk/summaries";
import type { AskingInstructor } from "../http/whoAsks";
import { lockedPerson } from "../people/found";
import type { World } from "../world/world";

/** Two entries of one person: the first is to be the second. */
interface Merge {
  readonly schoolId: string;
  readonly from: string;
  readonly into: string;
  readonly at: number;
}

/** Has the person who stays be in every class that the other was in; the other is in none, and has no card. */
async function moveClasses(held: Transaction<Tables>, { schoolId, from, into, at }: Merge): Promise<void> {
  const places = await held
    .selectFrom("class_people")
    .select("class_id")
    .where("school_id", "=", schoolId)
    .where("person_id", "=", from)
    .where("left_at", "is", null)
    .execute();
  for (const { class_id } of places) {
    await held
      .insertInto("class_people")
      .values({ school_id: schoolId, class_id, person_id: into, joined_at: at })
      .onConflict((conflict) => conflict.columns(["school_id", "class_id", "person_id"]).doUpdateSet({ left_at: null }))
      .execute();
  }
  await held
    .updateTable("class_people")
    .set({ left_at: at })
    .where("school_id", "=", schoolId)
    .where("person_id", "=", from)
    .where("left_at", "is", null)
    .execute();
  // Not revoked: that would be told at their benches as a card that was lost.
  await held
    .deleteFrom("cards")
    .where("school_id", "=", schoolId)
    .where("person_id", "=", from)
    .where("revoked_at", "is", null)
    .execute();
}

/** Has what was set one of them alone be set the person who stays. */
async function moveAssigned(held: Transaction<Tables>, { schoolId, from, into }: Merge): Promise<void> {
  const own = await held
    .selectFrom("assignment_people")
    .selectAll()
    .where("school_id", "=", schoolId)
    .where("person_id", "=", from)
    .execute();
  if (own.length > 0) {
    await held
      .insertInto("assignment_people")
      .values(own.map((row) => ({ ...row, person_id: into })))
      .onConflict((conflict) => conflict.doNothing())
      .execute();
  }
  await held.deleteFrom("assignment_people").where("school_id", "=", schoolId).where("person_id", "=", from).execute();
}

/** Counts the attempts at an assignment that both began on from those of the one who stays. */
async function countAttemptsOn(held: Transaction<Tables>, { schoolId, from, into }: Merge): Promise<void> {
  await held
    .updateTable("begun_sittings as own")
    .set((of) => ({
      attempt: of(
        "own.attempt",
        "+",
        of
          .selectFrom("begun_sittings as other")
          .select(({ fn, val }) => fn.coalesce(fn.max("other.attempt"), val(0)).as("attempts"))
          .whereRef("other.school_id", "=", "own.school_id")
          .whereRef("other.assignment_id", "=", "own.assignment_id")
          .where("other.person_id", "=", into),
      ),
    }))
    .where("own.school_id", "=", schoolId)
    .where("own.person_id", "=", from)
    .execute();
}

/** Shows everything of the one under the other. What was received is not touched: body, hash and place stay. @returns how many records */
async function moveWork(held: Transaction<Tables>, merge: Merge): Promise<number> {
  await countAttemptsOn(held, merge);
  const { schoolId, from, into } = merge;
  for (const table of ["begun_sittings", "comments"] as const) {
    await held
      .updateTable(table)
      .set({ person_id: into })
      .where("school_id", "=", schoolId)
      .where("person_id", "=", from)
      .execute();
  }
  const { numUpdatedRows } = await held
    .updateTable("records")
    .set({ person_id: into })
    .where("school_id", "=", schoolId)
    .where("person_id", "=", from)
    .executeTakeFirst();
  await sumUpAnew(held, schoolId, from);
  await sumUpAnew(held, schoolId, into);
  return Number(numUpdatedRows);
}

/**
 * Makes one person of two entries: what either did is shown under the one who stays, as it was sent. Benches where the other
 * joined go on, under the name of the one who stays. Nobody can take it back.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export function mergePeopleOf(
  from: string,
  into: string,
  { schoolId, instructorId }: AskingInstructor,
  { database, now }: World,
): Promise<z.infer<typeof mergedReceipt>> {
  const at = now();
  return database.transaction().execute(async (held) => {
    // Before the people, as whoever receives records does.
    await holdChain(held, schoolId);
    if (from === into) throw new SchoolError(schoolProblem("no-such-thing", ["into"]));
    await lockedPerson(held, schoolId, from);
    const { name } = await lockedPerson(held, schoolId, into);
    const merge = { schoolId, from, into, at };
    await moveClasses(held, merge);
    await moveAssigned(held, merge);
    const records = await moveWork(held, merge);
    await held
      .updateTable("people")
      .set((of) => ({ name, merged_into: into, pin_hash: null, updated_at: at, version: of("version", "+", 1) }))
      .where("school_id", "=", schoolId)
      .where(({ eb, or }) => or([eb("id", "=", from), eb("merged_into", "=", from)]))
      .execute();
    await writeAudit(held, {
      schoolId,
      byId: instructorId,
      at,
      action: "person.merged",
      ofId: from,
      details: { into },
    });
    return { records };
  });
}
