import type { SittingStatement } from "../../school/assignments/sittingStatement";
import type { World } from "../world/world";
import { stateOfSitting } from "./sittingState";

/** What the server states of a sitting that it gave out; null of a record that nobody began here. */
export async function statedSitting(
  schoolId: string,
  sittingId: string,
  world: World,
): Promise<SittingStatement | null> {
  const begun = await world.database
    .selectFrom("begun_sittings as begun")
    .innerJoin("assignments", (join) =>
      join.onRef("assignments.school_id", "=", "begun.school_id").onRef("assignments.id", "=", "begun.assignment_id"),
    )
    .select(["begun.begun_at", "begun.seed_from", "begun.extra_time", "begun.assignment_id", "title", "kind"])
    .where("begun.school_id", "=", schoolId)
    .where("begun.id", "=", sittingId)
    .executeTakeFirst();
  if (begun === undefined) return null;
  const { attempt, outcome, right, isLate, tries, findings } = await stateOfSitting(schoolId, sittingId, world);
  return {
    assignment: { id: begun.assignment_id, title: begun.title, kind: begun.kind },
    attempt,
    begunAt: new Date(begun.begun_at).toISOString(),
    seedFrom: begun.seed_from,
    extraTime_percent: begun.extra_time,
    triesBefore: tries,
    isLate,
    outcome,
    right,
    problems: findings.problems.map(({ code }) => code),
  };
}
