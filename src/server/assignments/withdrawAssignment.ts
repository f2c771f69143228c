import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import { writeAudit } from "../audit/writeAudit";
import { holdChain } from "../chain/schoolChain";
import type { AskingInstructor } from "../http/whoAsks";
import type { World } from "../world/world";
import { assignmentRow, hasBegun } from "./assignmentRows";

/**
 * Takes an assignment away that nobody has begun, as if it had never been set.
 *
 * @throws {SchoolError} "no-such-thing"; "begun-already": what was sat stays
 */
export async function withdrawAssignment(
  id: string,
  { schoolId, instructorId }: AskingInstructor,
  world: World,
): Promise<void> {
  await world.database.transaction().execute(async (database) => {
    // Held by whoever begins a sitting too: nobody begins what is just taken away.
    await holdChain(database, schoolId);
    const { class_id: classId, title } = await assignmentRow(database, schoolId, id);
    if (await hasBegun(database, schoolId, id)) throw new SchoolError(schoolProblem("begun-already", []));
    await database
      .deleteFrom("assignment_people")
      .where("school_id", "=", schoolId)
      .where("assignment_id", "=", id)
      .execute();
    await database.deleteFrom("assignments").where("school_id", "=", schoolId).where("id", "=", id).execute();
    const change = { schoolId, byId: instructorId, at: world.now(), action: "assignment.withdrawn", ofId: id };
    await writeAudit(database, { ...change, details: { classId, title } });
  });
}
