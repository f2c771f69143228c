import type { ExpressionBuilder, Kysely } from "kysely";
import type * as z from "zod/mini";
import { tidyName } from "../../school/names/foldedName";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { joined } from "../../school/wire/peopleWire";
import type { Tables } from "../database/tables/tables";
import { newSecret, newServerId, secretHash } from "../security/secrets";
import type { World } from "../world/world";

/** A bench of a school, as its cookie tells. */
export interface Bench {
  readonly schoolId: string;
  readonly deviceId: string;
}

/** A bench that somebody joins at. */
export interface JoiningBench {
  readonly schoolId: string;
  readonly classId: string;
  /** What its people call it. */
  readonly name: string;
  /** The secret of the cookie that it has already; empty where it has none. */
  readonly secret: string;
}

/** The bench of a secret, where it is one of this school and signed in. */
const knownBench = (database: Kysely<Tables>, { schoolId, secret }: JoiningBench) =>
  database
    .selectFrom("devices")
    .select("id")
    .where("token_hash", "=", secretHash(secret))
    .where("school_id", "=", schoolId)
    .where("signed_out_at", "is", null)
    .executeTakeFirst();

/** The bench that somebody joins at: the one that it was, in this class from now on, or a new one. */
export async function benchFor(
  database: Kysely<Tables>,
  joining: JoiningBench,
  world: World,
): Promise<{ readonly deviceId: string; readonly secret: string }> {
  const at = world.now();
  const known = joining.secret === "" ? undefined : await knownBench(database, joining);
  const { schoolId, classId } = joining;
  const now = { class_id: classId, name: tidyName(joining.name), seen_at: at };
  if (known !== undefined) {
    await database
      .updateTable("devices")
      .set(now)
      .where("school_id", "=", schoolId)
      .where("id", "=", known.id)
      .execute();
    return { deviceId: known.id, secret: joining.secret };
  }
  const [deviceId, secret] = [newServerId(world), newSecret(world)];
  await database
    .insertInto("devices")
    .values({ ...now, id: deviceId, school_id: schoolId, token_hash: secretHash(secret), created_at: at })
    .execute();
  return { deviceId, secret };
}

/** A person joins at a bench, or joins again. */
export async function sitDown(
  database: Kysely<Tables>,
  { schoolId, deviceId }: Bench,
  personId: string,
  at: number,
): Promise<void> {
  await database
    .insertInto("device_people")
    .values({ school_id: schoolId, device_id: deviceId, person_id: personId, joined_at: at })
    .onConflict((conflict) =>
      conflict.columns(["school_id", "device_id", "person_id"]).doUpdateSet({ joined_at: at, left_at: null }),
    )
    .execute();
}

/** When a card of somebody at a bench stopped being good after they joined there; null where none did. */
const lostCardSince = (of: ExpressionBuilder<Tables, "device_people">) =>
  of
    .selectFrom("cards")
    .select((card) => card.fn.max("revoked_at").as("at"))
    .whereRef("cards.school_id", "=", "device_people.school_id")
    .whereRef("cards.person_id", "=", "device_people.person_id")
    .whereRef("revoked_at", ">", "device_people.joined_at");

/**
 * What a bench knows of its class, and who joined there; the one who did so last stands for it.
 *
 * @throws {SchoolError} "nobody-joined" where everybody has left it
 */
export async function benchNow({ schoolId, deviceId }: Bench, world: World): Promise<z.infer<typeof joined>> {
  const { database, now } = world;
  const device = await database
    .selectFrom("devices")
    .innerJoin("schools", "schools.id", "devices.school_id")
    .innerJoin("classes", (join) =>
      join.onRef("classes.school_id", "=", "devices.school_id").onRef("classes.id", "=", "class_id"),
    )
    .select(["schools.name as school", "classes.id as classId", "classes.name as class", "classes.ended_at"])
    .where("devices.school_id", "=", schoolId)
    .where("devices.id", "=", deviceId)
    .executeTakeFirstOrThrow();
  const people = await database
    .selectFrom("device_people")
    .innerJoin("people", (join) =>
      join.onRef("people.school_id", "=", "device_people.school_id").onRef("people.id", "=", "person_id"),
    )
    .select(["people.id", "people.name", (of) => lostCardSince(of).as("lost_at")])
    .where("device_people.school_id", "=", schoolId)
    .where("device_id", "=", deviceId)
    .where("left_at", "is", null)
    .where("erased_at", "is", null)
    .orderBy("device_people.joined_at", "desc")
    .orderBy("people.id")
    .execute();
  const [person] = people;
  if (person === undefined) throw new SchoolError(schoolProblem("nobody-joined", []));
  return {
    school: { id: schoolId, name: device.school },
    class: { id: device.classId, name: device.class },
    person: { id: person.id, name: person.name },
    people: people.map(({ id, name, lost_at }) => ({ id, name, ...(lost_at !== null && { cardLostAt: lost_at }) })),
    classEndedAt: device.ended_at,
    deviceId,
    now: now(),
  };
}

/** Remembers that a bench was there. */
export async function sawBench({ schoolId, deviceId }: Bench, { database, now }: World): Promise<void> {
  await database
    .updateTable("devices")
    .set({ seen_at: now() })
    .where("school_id", "=", schoolId)
    .where("id", "=", deviceId)
    .execute();
}

/**
 * Somebody leaves a bench, or everybody does, and it is signed out.
 *
 * @param personId - null for everybody
 * @returns whether the bench stays signed in
 * @throws {SchoolError} "no-such-thing" where the person has not joined there
 */
export async function leaveBench(
  { schoolId, deviceId }: Bench,
  personId: string | null,
  { database, now }: World,
): Promise<boolean> {
  const at = now();
  return database.transaction().execute(async (transaction) => {
    const leaving = transaction
      .updateTable("device_people")
      .set({ left_at: at })
      .where("school_id", "=", schoolId)
      .where("device_id", "=", deviceId)
      .where("left_at", "is", null);
    if (personId !== null) {
      const left = await leaving.where("person_id", "=", personId).executeTakeFirst();
      if (left.numUpdatedRows === 0n) throw new SchoolError(schoolProblem("no-such-thing", ["personId"]));
      return true;
    }
    await leaving.execute();
    await transaction
      .updateTable("devices")
      .set({ signed_out_at: at })
      .where("school_id", "=", schoolId)
      .where("id", "=", deviceId)
      .execute();
    return false;
  });
}
