import type * as z from "zod/mini";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { deviceList } from "../../school/wire/classWire";
import { writeAudit } from "../audit/writeAudit";
import type { AskingInstructor } from "../http/whoAsks";
import type { World } from "../world/world";
import { revokeCards } from "./cards";
import { foundClass, lockedPeople } from "./found";

/**
 * Benches that joined a class, the one seen last first.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export async function devicesOf(
  classId: string,
  { schoolId }: AskingInstructor,
  { database }: World,
): Promise<z.infer<typeof deviceList>> {
  await foundClass(database, { schoolId, classId });
  const devices = await database
    .selectFrom("devices")
    .select(["id", "name", "created_at", "seen_at", "signed_out_at"])
    .where("school_id", "=", schoolId)
    .where("class_id", "=", classId)
    .orderBy("seen_at", "desc")
    .orderBy("id")
    .execute();
  const people = await database
    .selectFrom("device_people")
    .innerJoin("people", (join) =>
      join.onRef("people.school_id", "=", "device_people.school_id").onRef("people.id", "=", "person_id"),
    )
    .innerJoin("devices", (join) =>
      join.onRef("devices.school_id", "=", "device_people.school_id").onRef("devices.id", "=", "device_id"),
    )
    .select(["device_id", "people.id", "people.name"])
    .where("device_people.school_id", "=", schoolId)
    .where("devices.class_id", "=", classId)
    .where("left_at", "is", null)
    .orderBy("people.name")
    .execute();
  return {
    devices: devices.map(({ id, name, created_at, seen_at, signed_out_at }) => ({
      id,
      name,
      createdAt: created_at,
      seenAt: seen_at,
      signedOutAt: signed_out_at,
      people: people.flatMap((one) => (one.device_id === id ? [{ id: one.id, name: one.name }] : [])),
    })),
  };
}

/**
 * Signs a bench out: it has to join again, and is another bench then.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export async function signOutDevice(deviceId: string, who: AskingInstructor, world: World): Promise<void> {
  const at = world.now();
  await world.database.transaction().execute(async (database) => {
    const out = await database
      .updateTable("devices")
      .set(({ fn, val }) => ({ signed_out_at: fn.coalesce("signed_out_at", val(at)) }))
      .where("school_id", "=", who.schoolId)
      .where("id", "=", deviceId)
      .executeTakeFirst();
    if (out.numUpdatedRows === 0n) throw new SchoolError(schoolProblem("no-such-thing", []));
    const change = { schoolId: who.schoolId, byId: who.instructorId, at, ofId: deviceId };
    await writeAudit(database, { ...change, action: "device.signed-out" });
  });
}

/**
 * Takes a person out of a class: off its benches, their card good no more. What they did stays.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export async function leaveClass(
  classId: string,
  personId: string,
  who: AskingInstructor,
  world: World,
): Promise<void> {
  const at = world.now();
  const { schoolId } = who;
  await world.database.transaction().execute(async (database) => {
    // Whoever joins at a bench locks the person too: they are off each bench, or do not get to one.
    await lockedPeople(database, schoolId, [personId]);
    const left = await database
      .updateTable("class_people")
      .set({ left_at: at })
      .where("school_id", "=", schoolId)
      .where("class_id", "=", classId)
      .where("person_id", "=", personId)
      .where("left_at", "is", null)
      .executeTakeFirst();
    if (left.numUpdatedRows === 0n) throw new SchoolError(schoolProblem("no-such-thing", []));
    await revokeCards(database, { schoolId, classId, personIds: [personId] }, at);
    await database
      .updateTable("device_people")
      .set({ left_at: at })
      .where("school_id", "=", schoolId)
      .where("person_id", "=", personId)
      .where("left_at", "is", null)
      .where("device_id", "in", (query) =>
        query.selectFrom("devices").select("id").where("school_id", "=", schoolId).where("class_id", "=", classId),
      )
      .execute();
    const change = { schoolId, byId: who.instructorId, at, ofId: personId };
    await writeAudit(database, { ...change, action: "person.left-class", details: { classId } });
  });
}
