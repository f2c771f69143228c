import type * as z from "zod/mini";
import type { sittingLine } from "../../school/wire/assignmentsWire";
import type { World } from "../world/world";
import type { WhichSittings } from "./judging";

/** A sitting as it is known now, of whom and of which assignment. */
export interface KnownSitting {
  readonly personId: string;
  readonly assignmentId: string;
  readonly line: z.infer<typeof sittingLine>;
  /** What was found of it: problems, remarks, verdict; null while nothing has come in. */
  readonly found: string | null;
}

/** How many tries are in doubt, by what was found of a sitting. */
function doubtedIn(found: string | null): { readonly doubted?: number } {
  const { doubted }: { readonly doubted?: number } = found === null ? {} : JSON.parse(found);
  return doubted === undefined || doubted === 0 ? {} : { doubted };
}

/** Sittings as they are known now, in the order they were begun. Whoever came in since is marked by `judgeWaiting` first. */
export async function knownSittings(
  { schoolId, assignmentId, classId, personId, sittingId }: WhichSittings,
  { database }: World,
): Promise<KnownSitting[]> {
  let query = database
    .selectFrom("begun_sittings as begun")
    .innerJoin("assignments", (join) =>
      join.onRef("assignments.school_id", "=", "begun.school_id").onRef("assignments.id", "=", "begun.assignment_id"),
    )
    .leftJoin("sitting_judgments as judged", (join) =>
      join.onRef("judged.school_id", "=", "begun.school_id").onRef("judged.sitting_id", "=", "begun.id"),
    )
    .select(["begun.id", "begun.person_id", "begun.assignment_id", "begun.attempt", "begun.begun_at"])
    .select(["judged.received_at", "outcome", "share_right", "reloads", "is_late", "problem_count", "body"])
    .where("begun.school_id", "=", schoolId)
    .orderBy("begun.begun_at")
    .orderBy("begun.attempt");
  if (assignmentId !== undefined) query = query.where("begun.assignment_id", "=", assignmentId);
  if (classId !== undefined) query = query.where("assignments.class_id", "=", classId);
  if (personId !== undefined) query = query.where("begun.person_id", "=", personId);
  if (sittingId !== undefined) query = query.where("begun.id", "=", sittingId);
  const rows = await query.execute();
  return rows.map((row) => ({
    personId: row.person_id,
    assignmentId: row.assignment_id,
    line: {
      sittingId: row.id,
      attempt: row.attempt,
      begunAt: row.begun_at,
      receivedAt: row.received_at,
      outcome: row.outcome,
      right: row.share_right ?? 0,
      reloads: row.reloads ?? 0,
      isLate: row.is_late ?? false,
      problems: row.problem_count ?? 0,
      ...doubtedIn(row.body),
    },
    found: row.body,
  }));
}
