import type { Kysely } from "kysely";
import type * as z from "zod/mini";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { instructorList } from "../../school/wire/instructorsWire";
import { writeAudit } from "../audit/writeAudit";
import type { Tables } from "../database/tables/tables";
import type { AskingInstructor } from "../http/whoAsks";
import type { World } from "../world/world";

/** Everybody who teaches at a school, or did. */
export async function instructorsOf(
  { schoolId }: AskingInstructor,
  { database }: World,
): Promise<z.infer<typeof instructorList>> {
  const found = await database
    .selectFrom("instructors")
    .select(["id", "name", "login", "role", "created_at", "disabled_at"])
    .where("school_id", "=", schoolId)
    .orderBy("created_at")
    .execute();
  return {
    instructors: found.map(({ created_at, disabled_at, ...one }) => ({
      ...one,
      createdAt: created_at,
      disabledAt: disabled_at,
    })),
  };
}

/** Takes from an instructor what they could come in by. */
async function shutOut(database: Kysely<Tables>, instructorId: string, schoolId: string): Promise<void> {
  await database
    .deleteFrom("sign_ins")
    .where("instructor_id", "=", instructorId)
    .where("school_id", "=", schoolId)
    .execute();
  await database
    .deleteFrom("invitations")
    .where("instructor_id", "=", instructorId)
    .where("school_id", "=", schoolId)
    .where("used_at", "is", null)
    .execute();
}

/** @throws {SchoolError} "last-head" where an instructor is the only head of the school */
async function leaveAHead(database: Kysely<Tables>, instructorId: string, schoolId: string): Promise<void> {
  // Every head is locked: two heads that shut each other out at once would leave a school without one.
  const heads = await database
    .selectFrom("instructors")
    .select("id")
    .where("school_id", "=", schoolId)
    .where("role", "=", "head")
    .where("disabled_at", "is", null)
    .orderBy("id")
    .forUpdate()
    .execute();
  if (heads.every(({ id }) => id === instructorId)) throw new SchoolError(schoolProblem("last-head", []));
}

/**
 * Lets an instructor sign in no more, or again. One who is shut out is signed out everywhere, at once. A school always has a head.
 *
 * @throws {SchoolError} "no-such-thing", "last-head"
 */
export async function setDisabled(
  instructorId: string,
  isDisabled: boolean,
  who: AskingInstructor,
  world: World,
): Promise<void> {
  const at = world.now();
  await world.database.transaction().execute(async (database) => {
    if (isDisabled) await leaveAHead(database, instructorId, who.schoolId);
    const changed = await database
      .updateTable("instructors")
      .set({ disabled_at: isDisabled ? at : null })
      .where("id", "=", instructorId)
      .where("school_id", "=", who.schoolId)
      .executeTakeFirst();
    if (changed.numUpdatedRows === 0n) throw new SchoolError(schoolProblem("no-such-thing", []));
    if (isDisabled) await shutOut(database, instructorId, who.schoolId);
    const change = { schoolId: who.schoolId, byId: who.instructorId, at, ofId: instructorId };
    await writeAudit(database, { ...change, action: isDisabled ? "instructor.disabled" : "instructor.enabled" });
  });
}
