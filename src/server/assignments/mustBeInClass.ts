import type { Transaction } from "kysely";
import type * as z from "zod/mini";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { newAssignment } from "../../school/wire/assignmentsWire";
import type { Tables } from "../database/tables/tables";

/** Whom an assignment names: those it is for, and those with a time of their own. */
type Named = Pick<z.infer<typeof newAssignment>, "people" | "extraTime">;

/** People whom an assignment names already. */
export async function namedBefore(database: Transaction<Tables>, schoolId: string, assignmentId: string) {
  const rows = await database
    .selectFrom("assignment_people")
    .select("person_id")
    .where("school_id", "=", schoolId)
    .where("assignment_id", "=", assignmentId)
    .execute();
  return rows.map(({ person_id }) => person_id);
}

/**
 * Whoever is named must be in the class now. Whoever was named before they left it may stay: what they sat stays too.
 *
 * @throws {SchoolError} "left-class" where somebody left it, "no-such-thing" where they never were in it
 */
export async function mustBeInClass(
  database: Transaction<Tables>,
  { schoolId, classId }: { readonly schoolId: string; readonly classId: string },
  { people, extraTime }: Named,
  before: readonly string[] = [],
) {
  const named = new Set([...(people ?? []), ...extraTime.map(({ personId }) => personId)]);
  const rows = await database
    .selectFrom("class_people")
    .innerJoin("people", (join) =>
      join.onRef("people.school_id", "=", "class_people.school_id").onRef("people.id", "=", "person_id"),
    )
    .select(["person_id", "people.name", "left_at"])
    .where("class_people.school_id", "=", schoolId)
    .where("class_id", "=", classId)
    .where("merged_into", "is", null)
    .execute();
  const ever = new Map(rows.map((row) => [row.person_id, row]));
  if (![...named].every((person) => ever.has(person))) {
    throw new SchoolError(schoolProblem("no-such-thing", ["people"]));
  }
  const wasNamed = new Set(before);
  const left = rows.find(
    ({ person_id, left_at }) => left_at !== null && named.has(person_id) && !wasNamed.has(person_id),
  );
  if (left !== undefined) throw new SchoolError(schoolProblem("left-class", ["people"], { name: left.name }));
}
