import type * as z from "zod/mini";
import { itemAnalysis } from "../../progress/items/itemAnalysis";
import { questionScores, stationScores } from "../../progress/items/itemScores";
import type { SittingRecord } from "../../records/sitting/sittingRecord";
import type { difficultyAnswer } from "../../school/wire/assignmentsWire";
import { assignmentRow } from "../assignments/assignmentRows";
import type { AskingInstructor } from "../http/whoAsks";
import type { World } from "../world/world";
import { judgeWaiting } from "./judging";

/** The first sitting of each person that came in and agrees. */
async function firstSittings(schoolId: string, assignmentId: string, { database }: World): Promise<SittingRecord[]> {
  const rows = await database
    .selectFrom("begun_sittings as begun")
    .innerJoin("sitting_judgments as judged", (join) =>
      join.onRef("judged.school_id", "=", "begun.school_id").onRef("judged.sitting_id", "=", "begun.id"),
    )
    .innerJoin("records", (join) =>
      join.onRef("records.school_id", "=", "begun.school_id").onRef("records.id", "=", "begun.id"),
    )
    .distinctOn("begun.person_id")
    .select(["begun.person_id", "records.body"])
    .where("begun.school_id", "=", schoolId)
    .where("begun.assignment_id", "=", assignmentId)
    .where("judged.problem_count", "=", 0)
    .orderBy("begun.person_id")
    .orderBy("begun.attempt")
    .execute();
  return rows.map(({ body }) => JSON.parse(body).body.record);
}

/**
 * How hard each question and each station of an assignment proved.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export async function difficultyOf(
  assignmentId: string,
  { schoolId }: AskingInstructor,
  world: World,
): Promise<z.infer<typeof difficultyAnswer>> {
  await assignmentRow(world.database, schoolId, assignmentId);
  await judgeWaiting({ schoolId, assignmentId }, world);
  const records = await firstSittings(schoolId, assignmentId, world);
  return {
    people: records.length,
    questions: itemAnalysis(records.map(questionScores)),
    stations: itemAnalysis(records.map(stationScores)),
  };
}
