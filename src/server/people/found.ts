import type { Kysely } from "kysely";
import { foldedName } from "../../school/names/foldedName";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { Tables } from "../database/tables/tables";

/** Whose class. */
interface OfSchool {
  readonly schoolId: string;
  readonly classId: string;
}

/**
 * A class of a school.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export async function foundClass(database: Kysely<Tables>, { schoolId, classId }: OfSchool) {
  const found = await database
    .selectFrom("classes")
    .selectAll()
    .where("school_id", "=", schoolId)
    .where("id", "=", classId)
    .executeTakeFirst();
  if (found === undefined) throw new SchoolError(schoolProblem("no-such-thing", []));
  return found;
}

/**
 * A class that goes on, locked until the transaction ends: who comes into it meanwhile waits, so that no two of a name do.
 * Rows that only name the class are still made meanwhile, so that nobody who has a person and wants the class stands in the
 * way of somebody who has the class and wants the person: a class comes before its people.
 *
 * @throws {SchoolError} "no-such-thing", "class-ended"
 */
export async function lockedClass(database: Kysely<Tables>, { schoolId, classId }: OfSchool) {
  const found = await database
    .selectFrom("classes")
    .selectAll()
    .where("school_id", "=", schoolId)
    .where("id", "=", classId)
    .forNoKeyUpdate()
    .executeTakeFirst();
  if (found === undefined) throw new SchoolError(schoolProblem("no-such-thing", []));
  if (found.ended_at !== null) throw new SchoolError(schoolProblem("class-ended", []));
  return found;
}

/** Everybody who is in a class now, by name. */
export const peopleIn = (database: Kysely<Tables>, { schoolId, classId }: OfSchool) =>
  database
    .selectFrom("class_people")
    .innerJoin("people", (join) =>
      join.onRef("people.school_id", "=", "class_people.school_id").onRef("people.id", "=", "person_id"),
    )
    .selectAll("people")
    .select("class_people.joined_at")
    .where("class_people.school_id", "=", schoolId)
    .where("class_id", "=", classId)
    .where("left_at", "is", null)
    .where("erased_at", "is", null)
    .orderBy("people.name")
    .orderBy("people.id")
    .execute();

/** Whoever of a class has a name, however that is typed. */
export async function namedIn(database: Kysely<Tables>, ofClass: OfSchool, name: string) {
  const folded = foldedName(name);
  const people = await peopleIn(database, ofClass);
  return people.find((person) => foldedName(person.name) === folded);
}

/**
 * A person of a school who was neither erased nor merged into another, locked until the transaction ends.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export async function lockedPerson(database: Kysely<Tables>, schoolId: string, personId: string) {
  const found = await database
    .selectFrom("people")
    .selectAll()
    .where("school_id", "=", schoolId)
    .where("id", "=", personId)
    .where("erased_at", "is", null)
    .where("merged_into", "is", null)
    .forNoKeyUpdate()
    .executeTakeFirst();
  if (found === undefined) throw new SchoolError(schoolProblem("no-such-thing", []));
  return found;
}

/** Of these people, those who were neither erased nor merged into another, locked until the transaction ends. */
export async function lockedPeople(
  database: Kysely<Tables>,
  schoolId: string,
  personIds: readonly string[],
): Promise<ReadonlySet<string>> {
  if (personIds.length === 0) return new Set();
  const found = await database
    .selectFrom("people")
    .select("id")
    .where("school_id", "=", schoolId)
    .where("id", "in", personIds)
    .where("erased_at", "is", null)
    .where("merged_into", "is", null)
    // In one order, so that no two who lock several wait for each other.
    .orderBy("id")
    .forNoKeyUpdate()
    .execute();
  return new Set(found.map(({ id }) => id));
}
