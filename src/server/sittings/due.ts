import type * as z from "zod/mini";
import { attemptsLeft, dueState } from "../../school/assignments/assignment";
import type { dueAnswer } from "../../school/wire/assignmentsWire";
import type { World } from "../world/world";
import type { PersonAtBench } from "./atBench";
import { judgeWaiting } from "./judging";
import { knownSittings } from "./sittingLines";

/** How long one that is over is still shown, ms: two weeks. */
const SHOWN_AFTER = 14 * 24 * 3600 * 1000;

/** Assignments that are for a person, in the order in which they end. */
function assignmentsFor({ schoolId, personId }: PersonAtBench, { database, now }: World) {
  return database
    .selectFrom("assignments")
    .innerJoin("class_people", (join) =>
      join
        .onRef("class_people.school_id", "=", "assignments.school_id")
        .onRef("class_people.class_id", "=", "assignments.class_id")
        .on("class_people.person_id", "=", personId)
        .on("class_people.left_at", "is", null),
    )
    .leftJoin("assignment_people as own", (join) =>
      join
        .onRef("own.school_id", "=", "assignments.school_id")
        .onRef("own.assignment_id", "=", "assignments.id")
        .on("own.person_id", "=", personId),
    )
    .selectAll("assignments")
    .select(["own.extra_time as own_time"])
    .where("assignments.school_id", "=", schoolId)
    .where(({ eb, or }) => or([eb("whole_class", "=", true), eb("own.is_asked", "=", true)]))
    .where("until_at", ">", now() - SHOWN_AFTER)
    .orderBy("until_at")
    .orderBy("assignments.id")
    .execute();
}

async function unreadBy({ schoolId, personId }: PersonAtBench, { database }: World): Promise<number> {
  const { unread } = await database
    .selectFrom("comments")
    .select(({ fn }) => fn.countAll().as("unread"))
    .where("school_id", "=", schoolId)
    .where("person_id", "=", personId)
    .where("read_at", "is", null)
    .executeTakeFirstOrThrow();
  return Number(unread);
}

/** What is due for a person at a bench: never a sheet, which nobody sees before it is begun. */
export async function dueFor(person: PersonAtBench, world: World): Promise<z.infer<typeof dueAnswer>> {
  const which = { schoolId: person.schoolId, personId: person.personId };
  await judgeWaiting(which, world);
  const sittings = await knownSittings(which, world);
  const now = world.now();
  const due = (await assignmentsFor(person, world)).map((row) => {
    const own = sittings.filter(({ assignmentId }) => assignmentId === row.id).map(({ line }) => line);
    const terms = { from: row.from_at, until: row.until_at, attempts: row.attempts, endedAt: row.ended_at };
    return {
      assignmentId: row.id,
      title: row.title,
      kind: row.kind,
      from: row.from_at,
      // One that was ended early closed then.
      until: Math.min(row.until_at, row.ended_at ?? row.until_at),
      state: dueState(terms, own.length, now),
      left: attemptsLeft(terms, own.length),
      extraTime: row.own_time ?? person.extraTime,
      sittings: own,
    };
  });
  return { now, due, unread: await unreadBy(person, world) };
}
