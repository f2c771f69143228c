import type * as z from "zod/mini";
import { personsResult } from "../../school/assignments/resultsByPerson";
import type { classResults } from "../../school/wire/assignmentsWire";
import { assignmentsOf } from "../assignments/keepAssignments";
import type { AskingInstructor } from "../http/whoAsks";
import type { World } from "../world/world";
import { judgeWaiting } from "./judging";
import { knownSittings } from "./sittingLines";

/** Sheets by people: what each person of a class came to at each assignment that is for them. */
export async function resultsOfClass(
  classId: string,
  asking: AskingInstructor,
  world: World,
): Promise<z.infer<typeof classResults>> {
  const { schoolId } = asking;
  const which = { schoolId, classId };
  await judgeWaiting(which, world);
  const { assignments } = await assignmentsOf(classId, asking, world);
  const sittings = await knownSittings(which, world);
  const people = await world.database
    .selectFrom("class_people")
    .innerJoin("people", (join) =>
      join.onRef("people.school_id", "=", "class_people.school_id").onRef("people.id", "=", "class_people.person_id"),
    )
    .select(["people.id", "people.name"])
    .where("class_people.school_id", "=", schoolId)
    .where("class_id", "=", classId)
    .where("left_at", "is", null)
    .where("erased_at", "is", null)
    .orderBy("people.name")
    .orderBy("people.id")
    .execute();
  return {
    assignments,
    people: people.map(({ id, name }) => ({
      personId: id,
      name,
      results: assignments
        .filter((one) => one.people === null || one.people.includes(id))
        .map((one) => {
          const own = sittings.filter(({ personId, assignmentId }) => personId === id && assignmentId === one.id);
          return { assignmentId: one.id, ...personsResult(own.map(({ line }) => line)) };
        }),
    })),
  };
}
