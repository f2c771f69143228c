import type * as z from "zod/mini";
import { personsResult } from "../../school/assignments/resultsByPerson";
import type { classResults } from "../../school/wire/assignmentsWire";
import { assignmentsOf } from "../assignments/keepAssignments";
import type { AskingInstructor } from "../http/whoAsks";
import { peopleIn } from "../people/found";
import type { World } from "../world/world";
import { judgeWaiting } from "./judging";
import { knownSittings } from "./sittingLines";

/** Sheets by people: what each person of a class came to at each assignment that is for them. */
export async function resultsOfClass(
  classId: string,
  asking: AskingInstructor,
  world: World,
): Promise<z.infer<typeof classResults>> {
  const which = { schoolId: asking.schoolId, classId };
  await judgeWaiting(which, world);
  const { assignments } = await assignmentsOf(classId, asking, world);
  const sittings = await knownSittings(which, world);
  const people = await peopleIn(world.database, which);
  return {
    assignments,
    people: people.map(({ id, name }) => ({
      personId: id,
      name,
      results: assignments
        .filter((one) => one.people === null || one.people.includes(id))
        .map((one) => {
          const own = sittings.filter(({ personId, assignmentId }) => personId === id && assignmentId === one.id);
          const { others, ...result } = personsResult(own.map(({ line }) => line));
          return { assignmentId: one.id, ...result, others: [...others] };
        }),
    })),
  };
}
