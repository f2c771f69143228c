import type { TryResult } from "../../drill/marking/tryResult";
import { parseSheet } from "../../drill/sheet/parseSheet";
import { withExtraTime } from "../../school/assignments/extraTime";
import { judgeSitting, type SentTry, type SittingJudgment } from "../../school/assignments/judgeSitting";
import { holdChain } from "../chain/schoolChain";
import type { World } from "../world/world";

/** Which sittings are looked at: of an assignment, of a class, of a person, or one. */
export interface WhichSittings {
  readonly schoolId: string;
  readonly assignmentId?: string;
  readonly classId?: string;
  readonly personId?: string;
  readonly sittingId?: string;
}

/** Sittings whose record came in and that nobody has marked yet. */
function waitingOf({ schoolId, assignmentId, classId, personId, sittingId }: WhichSittings, { database }: World) {
  let query = database
    .selectFrom("begun_sittings as begun")
    .innerJoin("records", (join) =>
      join.onRef("records.school_id", "=", "begun.school_id").onRef("records.id", "=", "begun.id"),
    )
    .innerJoin("assignments", (join) =>
      join.onRef("assignments.school_id", "=", "begun.school_id").onRef("assignments.id", "=", "begun.assignment_id"),
    )
    .leftJoin("sitting_judgments as judged", (join) =>
      join.onRef("judged.school_id", "=", "begun.school_id").onRef("judged.sitting_id", "=", "begun.id"),
    )
    .select(["begun.id", "begun.person_id", "begun.seed", "begun.seed_from", "begun.extra_time", "begun.begun_at"])
    .select(["begun.until_at", "assignments.sheet", "records.body", "records.received_at"])
    .select("records.person_id as sent_for")
    .where("begun.school_id", "=", schoolId)
    .where("records.kind", "=", "sittings")
    .where("judged.sitting_id", "is", null);
  if (assignmentId !== undefined) query = query.where("begun.assignment_id", "=", assignmentId);
  if (classId !== undefined) query = query.where("assignments.class_id", "=", classId);
  if (personId !== undefined) query = query.where("begun.person_id", "=", personId);
  if (sittingId !== undefined) query = query.where("begun.id", "=", sittingId);
  return query.execute();
}

type Waiting = Awaited<ReturnType<typeof waitingOf>>[number];

/** Tries of a sitting as they were sent. */
async function triesSent(schoolId: string, sittingId: string, { database }: World): Promise<SentTry[]> {
  const rows = await database
    .selectFrom("sitting_tries")
    .selectAll()
    .where("school_id", "=", schoolId)
    .where("sitting_id", "=", sittingId)
    .orderBy("place")
    .execute();
  return rows.map(({ place, body, motion, received_at, waited_ms }) => ({
    index: place,
    result: JSON.parse(body) as TryResult,
    motion,
    receivedAt: received_at,
    waited_ms,
  }));
}

function judgmentOf(one: Waiting, sent: readonly SentTry[], { appVersion }: World): SittingJudgment {
  const given = {
    personId: one.person_id,
    sheet: withExtraTime(parseSheet(JSON.parse(one.sheet)), one.extra_time),
    seed: one.seed,
    seedFrom: one.seed_from,
    extraTime_percent: one.extra_time,
    begunAt: one.begun_at,
    until: one.until_at,
  };
  const received = { personId: one.sent_for, body: JSON.parse(one.body).body, receivedAt: one.received_at };
  return judgeSitting(given, sent, received, appVersion);
}

/** Keeps what a sitting came to, unless its record was deleted, or its person erased, while it was marked. */
function keepJudgment(schoolId: string, one: Waiting, found: SittingJudgment, world: World): Promise<void> {
  const { problems, remarks, marking, worked_ms, doubted } = found;
  return world.database.transaction().execute(async (database) => {
    await holdChain(database, schoolId);
    const record = await database
      .selectFrom("records")
      .select("id")
      .where("school_id", "=", schoolId)
      .where("id", "=", one.id)
      .executeTakeFirst();
    if (record === undefined) return;
    await database
      .insertInto("sitting_judgments")
      .values({
        school_id: schoolId,
        sitting_id: one.id,
        judged_at: world.now(),
        app_version: world.appVersion,
        received_at: one.received_at,
        outcome: found.outcome,
        share_right: found.right,
        reloads: found.reloads,
        is_late: found.isLate,
        problem_count: problems.length,
        body: JSON.stringify({ problems, remarks, verdict: marking?.verdict ?? null, worked_ms, doubted }),
      })
      // Another server may have been quicker: it marked by the same rules.
      .onConflict((conflict) => conflict.columns(["school_id", "sitting_id"]).doNothing())
      .execute();
  });
}

/**
 * Replays and marks sittings whose records came in since somebody last looked. Whoever asks for results calls it first, so that
 * nothing hangs on what happened after a record was taken: a server that was killed there marks it when it is next asked.
 */
export async function judgeWaiting(which: WhichSittings, world: World): Promise<void> {
  for (const one of await waitingOf(which, world)) {
    const found = judgmentOf(one, await triesSent(which.schoolId, one.id, world), world);
    await keepJudgment(which.schoolId, one, found, world);
  }
}
