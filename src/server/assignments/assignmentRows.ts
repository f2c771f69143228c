import type { Kysely, Selectable } from "kysely";
import type * as z from "zod/mini";
import { shortFingerprint } from "../../drill/sheet/sheetFingerprint";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { assignmentAnswer } from "../../school/wire/assignmentsWire";
import type { AssignmentRow } from "../database/tables/assignmentTables";
import type { Tables } from "../database/tables/tables";

type Answer = z.infer<typeof assignmentAnswer>;
type Reader = Pick<Kysely<Tables>, "selectFrom">;

/** A row as it is read. */
export type ReadAssignment = Selectable<AssignmentRow>;

/** An assignment of a school. @throws {SchoolError} "no-such-thing" */
export async function assignmentRow(database: Reader, schoolId: string, id: string): Promise<ReadAssignment> {
  const found = await database
    .selectFrom("assignments")
    .selectAll()
    .where("school_id", "=", schoolId)
    .where("id", "=", id)
    .executeTakeFirst();
  if (found === undefined) throw new SchoolError(schoolProblem("no-such-thing", []));
  return found;
}

/** Whether somebody has begun a sitting of an assignment. */
export async function hasBegun(database: Reader, schoolId: string, id: string): Promise<boolean> {
  const found = await database
    .selectFrom("begun_sittings")
    .select("id")
    .where("school_id", "=", schoolId)
    .where("assignment_id", "=", id)
    .executeTakeFirst();
  return found !== undefined;
}

async function countsOf(database: Reader, schoolId: string, ids: readonly string[]) {
  const rows = await database
    .selectFrom("begun_sittings")
    .leftJoin("records", (join) =>
      join.onRef("records.school_id", "=", "begun_sittings.school_id").onRef("records.id", "=", "begun_sittings.id"),
    )
    .select(["assignment_id"])
    .select(({ fn }) => [fn.count("begun_sittings.id").as("begun"), fn.count("records.id").as("received")])
    .where("begun_sittings.school_id", "=", schoolId)
    .where("assignment_id", "in", ids)
    .groupBy("assignment_id")
    .execute();
  return new Map(rows.map((row) => [row.assignment_id, row]));
}

/** Assignments as an instructor sees them, in the order of their rows. */
export async function assignmentAnswers(
  database: Reader,
  schoolId: string,
  rows: readonly ReadAssignment[],
): Promise<Answer[]> {
  if (rows.length === 0) return [];
  const ids = rows.map(({ id }) => id);
  const counts = await countsOf(database, schoolId, ids);
  const people = await database
    .selectFrom("assignment_people")
    .selectAll()
    .where("school_id", "=", schoolId)
    .where("assignment_id", "in", ids)
    .orderBy("person_id")
    .execute();
  return rows.map((row) => {
    const own = people.filter(({ assignment_id }) => assignment_id === row.id);
    const { begun = 0, received = 0 } = counts.get(row.id) ?? {};
    return {
      id: row.id,
      classId: row.class_id,
      title: row.title,
      fingerprint: shortFingerprint(row.sheet_sha256),
      kind: row.kind,
      from: row.from_at,
      until: row.until_at,
      attempts: row.attempts,
      people: row.whole_class ? null : own.flatMap((one) => (one.is_asked ? [one.person_id] : [])),
      extraTime: own.flatMap(({ person_id, extra_time }) =>
        extra_time === null ? [] : [{ personId: person_id, percent: extra_time }],
      ),
      version: row.version,
      createdAt: row.created_at,
      endedAt: row.ended_at,
      begun: Number(begun),
      received: Number(received),
    };
  });
}
