import type { Transaction } from "kysely";
import type * as z from "zod/mini";
import { canonicalJson } from "../../drill/canonicalJson";
import { parseSheet } from "../../drill/sheet/parseSheet";
import type { Sheet } from "../../drill/sheet/sheet";
import { sheetSha256 } from "../../drill/sheet/sheetFingerprint";
import { isReadableName } from "../../school/names/readable";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type {
  assignmentAnswer,
  assignmentList,
  assignmentWithSheet,
  changedAssignment,
  newAssignment,
} from "../../school/wire/assignmentsWire";
import { ProblemError } from "../../wording/problem";
import { writeAudit } from "../audit/writeAudit";
import { holdChain } from "../chain/schoolChain";
import type { Tables } from "../database/tables/tables";
import type { AskingInstructor } from "../http/whoAsks";
import { newServerId } from "../security/secrets";
import type { World } from "../world/world";
import { assignmentAnswers, assignmentRow, hasBegun } from "./assignmentRows";
import { mustBeInClass, namedBefore } from "./mustBeInClass";

type Answer = z.infer<typeof assignmentAnswer>;
type Terms = Omit<z.infer<typeof newAssignment>, "classId" | "sheet">;

/** The sheet that was sent, looked at like any other from outside. @throws {SchoolError} "sheet-not-read", "unreadable-name" */
function sheetOf(sent: unknown): Sheet {
  try {
    const sheet = parseSheet(sent);
    if (!isReadableName(sheet.title)) throw new SchoolError(schoolProblem("unreadable-name", ["sheet", "title"]));
    return sheet;
  } catch (error) {
    if (!(error instanceof ProblemError) || error instanceof SchoolError) throw error;
    throw new SchoolError(schoolProblem("sheet-not-read", ["sheet"], { why: error.says }));
  }
}

const sheetColumns = (sheet: Sheet) => ({
  sheet: canonicalJson(sheet),
  title: sheet.title,
  sheet_sha256: sheetSha256(sheet),
});

function termColumns({ kind, from, until, attempts, people }: Terms) {
  if (until <= from) throw new SchoolError(schoolProblem("ends-before-it-begins", ["until"]));
  return { kind, from_at: from, until_at: until, attempts, whole_class: people === null };
}

async function putPeople(database: Transaction<Tables>, schoolId: string, assignmentId: string, terms: Terms) {
  await database
    .deleteFrom("assignment_people")
    .where("school_id", "=", schoolId)
    .where("assignment_id", "=", assignmentId)
    .execute();
  const extra = new Map(terms.extraTime.map(({ personId, percent }) => [personId, percent]));
  const asked = new Set(terms.people ?? []);
  const rows = [...new Set([...asked, ...extra.keys()])].map((person) => ({
    school_id: schoolId,
    assignment_id: assignmentId,
    person_id: person,
    is_asked: asked.has(person),
    extra_time: extra.get(person) ?? null,
  }));
  if (rows.length > 0) await database.insertInto("assignment_people").values(rows).execute();
}

/** One assignment as it is now. */
async function answerOf(database: World["database"], schoolId: string, id: string): Promise<Answer> {
  const [answer] = await assignmentAnswers(database, schoolId, [await assignmentRow(database, schoolId, id)]);
  if (answer === undefined) throw new SchoolError(schoolProblem("no-such-thing", []));
  return answer;
}

/**
 * Sets a class, or some of its people, a sheet.
 *
 * @throws {SchoolError} "sheet-not-read", "ends-before-it-begins", "no-such-thing", "left-class"
 */
export async function makeAssignment(
  { classId, sheet, ...terms }: z.infer<typeof newAssignment>,
  asking: AskingInstructor,
  world: World,
): Promise<Answer> {
  const { schoolId, instructorId } = asking;
  const columns = { ...sheetColumns(sheetOf(sheet)), ...termColumns(terms) };
  const [id, now] = [newServerId(world), world.now()];
  await world.database.transaction().execute(async (database) => {
    // Until it is set nobody is erased, or merged into another.
    await holdChain(database, schoolId);
    const found = await database
      .selectFrom("classes")
      .select("id")
      .where("school_id", "=", schoolId)
      .where("id", "=", classId)
      .where("ended_at", "is", null)
      .executeTakeFirst();
    if (found === undefined) throw new SchoolError(schoolProblem("no-such-thing", ["classId"]));
    await mustBeInClass(database, { schoolId, classId }, terms);
    const stamp = { by_id: instructorId, created_at: now, updated_at: now, version: 1 };
    await database
      .insertInto("assignments")
      .values({ id, school_id: schoolId, class_id: classId, ...columns, ...stamp })
      .execute();
    await putPeople(database, schoolId, id, terms);
    await writeAudit(database, {
      schoolId,
      byId: asking.instructorId,
      at: now,
      action: "assignment.made",
      ofId: id,
      details: { classId, title: columns.title },
    });
  });
  return answerOf(world.database, schoolId, id);
}

/**
 * Changes an assignment. Its sheet stays once somebody has begun it: what was sat must be what is shown.
 *
 * @throws {SchoolError} "assignment-changed" where somebody changed it meanwhile, "sheet-in-use", and as `makeAssignment`
 */
export async function changeAssignment(
  id: string,
  { version, sheet, ...terms }: z.infer<typeof changedAssignment>,
  asking: AskingInstructor,
  world: World,
): Promise<Answer> {
  const { schoolId } = asking;
  const asked = sheet === undefined ? null : sheetColumns(sheetOf(sheet));
  const columns = termColumns(terms);
  const now = world.now();
  await world.database.transaction().execute(async (database) => {
    // Held by whoever begins a sitting too: nobody begins by a sheet that is being changed, and changes come one by one.
    await holdChain(database, schoolId);
    const before = await assignmentRow(database, schoolId, id);
    if (before.version !== version) {
      throw new SchoolError(schoolProblem("assignment-changed", ["version"], { version: before.version }));
    }
    const isOther = asked !== null && asked.sheet !== before.sheet;
    if (isOther && (await hasBegun(database, schoolId, id)))
      throw new SchoolError(schoolProblem("sheet-in-use", ["sheet"]));
    const ofClass = { schoolId, classId: before.class_id };
    await mustBeInClass(database, ofClass, terms, await namedBefore(database, schoolId, id));
    await database
      .updateTable("assignments")
      .set({ ...(asked ?? {}), ...columns, updated_at: now, version: version + 1 })
      .where("school_id", "=", schoolId)
      .where("id", "=", id)
      .execute();
    await putPeople(database, schoolId, id, terms);
    await writeAudit(database, {
      schoolId,
      byId: asking.instructorId,
      at: now,
      action: "assignment.changed",
      ofId: id,
      details: { title: asked?.title ?? before.title, version: version + 1 },
    });
  });
  return answerOf(world.database, schoolId, id);
}

/** Ends an assignment: nobody can begin it any more. What goes on can be brought to its end. @throws {SchoolError} "no-such-thing" */
export async function endAssignment(id: string, asking: AskingInstructor, world: World): Promise<Answer> {
  const { schoolId } = asking;
  const now = world.now();
  await world.database.transaction().execute(async (database) => {
    const { ended_at, title } = await assignmentRow(database, schoolId, id);
    if (ended_at !== null) return;
    await database
      .updateTable("assignments")
      .set(({ eb }) => ({ ended_at: now, updated_at: now, version: eb("version", "+", 1) }))
      .where("school_id", "=", schoolId)
      .where("id", "=", id)
      .execute();
    await writeAudit(database, {
      schoolId,
      byId: asking.instructorId,
      at: now,
      action: "assignment.ended",
      ofId: id,
      details: { title },
    });
  });
  return answerOf(world.database, schoolId, id);
}

/** Every assignment of a class, the latest first. */
export async function assignmentsOf(
  classId: string,
  { schoolId }: AskingInstructor,
  { database }: World,
): Promise<z.infer<typeof assignmentList>> {
  const rows = await database
    .selectFrom("assignments")
    .selectAll()
    .where("school_id", "=", schoolId)
    .where("class_id", "=", classId)
    .orderBy("from_at", "desc")
    .orderBy("id")
    .execute();
  return { assignments: await assignmentAnswers(database, schoolId, rows) };
}

/** One assignment with its sheet. @throws {SchoolError} "no-such-thing" */
export async function wholeAssignment(
  id: string,
  { schoolId }: AskingInstructor,
  { database }: World,
): Promise<z.infer<typeof assignmentWithSheet>> {
  const { sheet } = await assignmentRow(database, schoolId, id);
  return { ...(await answerOf(database, schoolId, id)), sheet: JSON.parse(sheet) };
}
