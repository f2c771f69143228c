import type * as z from "zod/mini";
import { tidyName } from "../../school/names/foldedName";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { classList, schoolClass } from "../../school/wire/classWire";
import { writeAudit } from "../audit/writeAudit";
import type { AskingInstructor } from "../http/whoAsks";
import { newServerId } from "../security/secrets";
import type { World } from "../world/world";
import { foundClass } from "./found";

type SchoolClass = z.infer<typeof schoolClass>;

const changeBy = (who: AskingInstructor, ofId: string, { now }: World) => ({
  schoolId: who.schoolId,
  byId: who.instructorId,
  at: now(),
  ofId,
});

/** Every class of a school, those that go on first. */
export async function classesOf(
  { schoolId }: AskingInstructor,
  { database }: World,
): Promise<z.infer<typeof classList>> {
  const found = await database
    .selectFrom("classes")
    .leftJoin("class_people", (join) =>
      join
        .onRef("class_people.school_id", "=", "classes.school_id")
        .onRef("class_id", "=", "classes.id")
        .on("left_at", "is", null),
    )
    .select(({ fn }) => [
      "classes.id",
      "classes.name",
      "classes.created_at",
      "classes.ended_at",
      fn.count<number>("person_id").as("people"),
    ])
    .where("classes.school_id", "=", schoolId)
    .groupBy(["classes.id", "classes.name", "classes.created_at", "classes.ended_at"])
    .orderBy("classes.ended_at", (order) => order.desc().nullsFirst())
    .orderBy("classes.created_at", "desc")
    .execute();
  return {
    classes: found.map(({ created_at, ended_at, ...one }) => ({ ...one, createdAt: created_at, endedAt: ended_at })),
  };
}

/** Makes a class. */
export async function makeClass(name: string, who: AskingInstructor, world: World): Promise<SchoolClass> {
  const made = { id: newServerId(world), name: tidyName(name), createdAt: world.now(), endedAt: null, people: 0 };
  await world.database.transaction().execute(async (database) => {
    await database
      .insertInto("classes")
      .values({ id: made.id, school_id: who.schoolId, name: made.name, created_at: made.createdAt })
      .execute();
    await writeAudit(database, {
      ...changeBy(who, made.id, world),
      action: "class.made",
      details: { name: made.name },
    });
  });
  return made;
}

/**
 * Calls a class something else.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export async function renameClass(classId: string, name: string, who: AskingInstructor, world: World): Promise<void> {
  await world.database.transaction().execute(async (database) => {
    const before = await foundClass(database, { schoolId: who.schoolId, classId });
    await database
      .updateTable("classes")
      .set({ name: tidyName(name) })
      .where("school_id", "=", who.schoolId)
      .where("id", "=", classId)
      .execute();
    const details = { from: before.name, to: tidyName(name) };
    await writeAudit(database, { ...changeBy(who, classId, world), action: "class.renamed", details });
  });
}

/**
 * Ends a class: nobody joins it any more, by code or card. Benches that joined stay signed in, so that what waits there
 * still comes.
 *
 * @throws {SchoolError} "no-such-thing"; "class-ended" where it has ended already
 */
export async function endClass(classId: string, who: AskingInstructor, world: World): Promise<void> {
  const at = world.now();
  await world.database.transaction().execute(async (database) => {
    const ended = await database
      .updateTable("classes")
      .set({ ended_at: at })
      .where("school_id", "=", who.schoolId)
      .where("id", "=", classId)
      .where("ended_at", "is", null)
      .executeTakeFirst();
    if (ended.numUpdatedRows === 0n) {
      await foundClass(database, { schoolId: who.schoolId, classId });
      throw new SchoolError(schoolProblem("class-ended", []));
    }
    for (const table of ["class_codes", "cards"] as const) {
      await database
        .updateTable(table)
        .set({ revoked_at: at })
        .where("school_id", "=", who.schoolId)
        .where("class_id", "=", classId)
        .where("revoked_at", "is", null)
        .execute();
    }
    await writeAudit(database, { ...changeBy(who, classId, world), action: "class.ended" });
  });
}
