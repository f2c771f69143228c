import type { Kysely } from "kysely";
import { tidyName } from "../../school/names/foldedName";
import type { Tables } from "../database/tables/tables";
import { newServerId } from "../security/secrets";
import type { World } from "../world/world";

/** A class that somebody comes into, and the moment. */
export interface Into {
  readonly schoolId: string;
  readonly classId: string;
}

/** Somebody whom a school does not know yet. */
interface Newcomer {
  readonly name: string;
  readonly extraTime?: number;
  readonly pinHash?: string | null;
  readonly isByCode?: boolean;
}

/** Puts a person of the school into a class; whoever left it comes back. */
async function putIntoClass(
  database: Kysely<Tables>,
  { schoolId, classId }: Into,
  personId: string,
  at: number,
): Promise<void> {
  await database
    .insertInto("class_people")
    .values({ school_id: schoolId, class_id: classId, person_id: personId, joined_at: at })
    .onConflict((conflict) =>
      conflict.columns(["school_id", "class_id", "person_id"]).doUpdateSet({ joined_at: at, left_at: null }),
    )
    .execute();
}

/** Gives a person of the school another extra time, percent. */
export async function setExtraTime(
  database: Kysely<Tables>,
  schoolId: string,
  { id, extraTime }: { readonly id: string; readonly extraTime: number },
  { now }: World,
): Promise<void> {
  await database
    .updateTable("people")
    .set(({ eb }) => ({ extra_time: extraTime, updated_at: now(), version: eb("version", "+", 1) }))
    .where("school_id", "=", schoolId)
    .where("id", "=", id)
    .execute();
}

/** Somebody whom the school knows already. */
interface Known {
  readonly id: string;
  /** Percent; null where it stays as it is. */
  readonly extraTime: number | null;
}

/** Brings a person of the school, whom the transaction has locked, into a class. @returns the id */
export async function bringIn(
  database: Kysely<Tables>,
  into: Into,
  { id, extraTime }: Known,
  world: World,
): Promise<string> {
  await putIntoClass(database, into, id, world.now());
  if (extraTime !== null) await setExtraTime(database, into.schoolId, { id, extraTime }, world);
  return id;
}

/** Makes a person of a school and puts them into a class. @returns the id */
export async function makePerson(
  database: Kysely<Tables>,
  into: Into,
  { name, extraTime = 0, pinHash = null, isByCode = false }: Newcomer,
  world: World,
): Promise<string> {
  const id = newServerId(world);
  const at = world.now();
  await database
    .insertInto("people")
    .values({
      id,
      school_id: into.schoolId,
      name: tidyName(name),
      pin_hash: pinHash,
      by_code: isByCode,
      extra_time: extraTime,
      created_at: at,
      updated_at: at,
      version: 1,
    })
    .execute();
  await putIntoClass(database, into, id, at);
  return id;
}
