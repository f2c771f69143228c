import type * as z from "zod/mini";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { commentList } from "../../school/wire/assignmentsWire";
import { writeAudit } from "../audit/writeAudit";
import { holdChain } from "../chain/schoolChain";
import type { AskingInstructor } from "../http/whoAsks";
import { newServerId } from "../security/secrets";
import type { World } from "../world/world";

/** Whose comments: on a sitting, or for a person. */
interface WhoseComments {
  readonly schoolId: string;
  readonly sittingId?: string;
  readonly personId?: string;
}

/** Most comments that are given at once, the latest. */
const MOST = 200;

/** Comments, the latest first. */
export async function commentsOf(
  { schoolId, sittingId, personId }: WhoseComments,
  { database }: World,
): Promise<z.infer<typeof commentList>> {
  let query = database
    .selectFrom("comments")
    .innerJoin("instructors", "instructors.id", "comments.by_id")
    .innerJoin("begun_sittings as begun", (join) =>
      join.onRef("begun.school_id", "=", "comments.school_id").onRef("begun.id", "=", "comments.sitting_id"),
    )
    .innerJoin("assignments", (join) =>
      join.onRef("assignments.school_id", "=", "begun.school_id").onRef("assignments.id", "=", "begun.assignment_id"),
    )
    .select(["comments.id", "comments.sitting_id", "comments.text", "comments.at", "comments.read_at"])
    .select(["instructors.name as by", "assignments.title"])
    .where("comments.school_id", "=", schoolId)
    .orderBy("comments.at", "desc")
    .orderBy("comments.id")
    .limit(MOST);
  if (sittingId !== undefined) query = query.where("comments.sitting_id", "=", sittingId);
  if (personId !== undefined) query = query.where("comments.person_id", "=", personId);
  const rows = await query.execute();
  return {
    comments: rows.map(({ sitting_id, read_at, ...row }) => ({ ...row, sittingId: sitting_id, readAt: read_at })),
  };
}

/** Says something of a sitting, for its person to read. @throws {SchoolError} "no-such-thing" */
export async function makeComment(
  sittingId: string,
  text: string,
  { schoolId, instructorId }: AskingInstructor,
  world: World,
): Promise<z.infer<typeof commentList>> {
  await world.database.transaction().execute(async (held) => {
    // Until the comment is there nobody is erased, or merged into another.
    await holdChain(held, schoolId);
    const sitting = await held
      .selectFrom("begun_sittings")
      .select("person_id")
      .where("school_id", "=", schoolId)
      .where("id", "=", sittingId)
      .executeTakeFirst();
    if (sitting === undefined) throw new SchoolError(schoolProblem("no-such-thing", []));
    const row = {
      school_id: schoolId,
      id: newServerId(world),
      sitting_id: sittingId,
      person_id: sitting.person_id,
      by_id: instructorId,
      text,
      at: world.now(),
    };
    await held.insertInto("comments").values(row).execute();
    const change = { schoolId, byId: instructorId, at: row.at, action: "comment.made", ofId: row.id };
    await writeAudit(held, { ...change, details: { sittingId } });
  });
  return commentsOf({ schoolId, sittingId }, world);
}

/** The person has read what there was to read. */
export async function readComments(
  { schoolId, personId }: { readonly schoolId: string; readonly personId: string },
  { database, now }: World,
): Promise<void> {
  await database
    .updateTable("comments")
    .set({ read_at: now() })
    .where("school_id", "=", schoolId)
    .where("person_id", "=", personId)
    .where("read_at", "is", null)
    .execute();
}
