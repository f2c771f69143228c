import type { Selectable, Transaction } from "kysely";
import type * as z from "zod/mini";
import { canonicalJson } from "../../drill/canonicalJson";
import { sha256Hex } from "../../drill/sha256";
import { parseSheet } from "../../drill/sheet/parseSheet";
import { dueState } from "../../school/assignments/assignment";
import { withExtraTime } from "../../school/assignments/extraTime";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { askedSitting, givenSitting } from "../../school/wire/assignmentsWire";
import { assignmentRow, type ReadAssignment } from "../assignments/assignmentRows";
import { addToChain, holdChain } from "../chain/schoolChain";
import type { BegunSittingRow } from "../database/tables/assignmentTables";
import type { Tables } from "../database/tables/tables";
import type { AskingBench } from "../http/whoAsks";
import type { World } from "../world/world";
import { type PersonAtBench, personAtBench } from "./atBench";

/** A sitting that was begun, as it is read. */
export type ReadSitting = Selectable<BegunSittingRow>;

/** Why an assignment cannot be begun, by how it stands. */
const REFUSALS = { "not-yet": "not-begun-yet", over: "assignment-over", "used-up": "attempts-used" } as const;

/** A seed that nobody knew before: 32 bits. */
function drawnSeed({ chance }: World): number {
  return new DataView(Uint8Array.from(chance(4)).buffer).getUint32(0);
}

/** What a sitting is sat by. */
function givenOf(sitting: ReadSitting, assignment: ReadAssignment): z.infer<typeof givenSitting> {
  return {
    sittingId: sitting.id,
    assignmentId: assignment.id,
    kind: assignment.kind,
    sheet: withExtraTime(parseSheet(JSON.parse(assignment.sheet)), sitting.extra_time),
    seed: sitting.seed,
    seedFrom: sitting.seed_from,
    extraTime: sitting.extra_time,
    attempt: sitting.attempt,
    begunAt: sitting.begun_at,
    until: sitting.until_at,
  };
}

/** Whether an assignment is for somebody, and with how much extra time; null where it is for others. */
async function askedOf(database: Transaction<Tables>, assignment: ReadAssignment, person: PersonAtBench) {
  const { schoolId, personId } = person;
  const inClass = await database
    .selectFrom("class_people")
    .select("person_id")
    .where("school_id", "=", schoolId)
    .where("class_id", "=", assignment.class_id)
    .where("person_id", "=", personId)
    .where("left_at", "is", null)
    .executeTakeFirst();
  const own = await database
    .selectFrom("assignment_people")
    .select(["is_asked", "extra_time"])
    .where("school_id", "=", schoolId)
    .where("assignment_id", "=", assignment.id)
    .where("person_id", "=", personId)
    .executeTakeFirst();
  const isAsked = inClass !== undefined && (assignment.whole_class || own?.is_asked === true);
  return isAsked ? { extraTime: own?.extra_time ?? person.extraTime } : null;
}

/** @throws {SchoolError} "id-taken" where the id is that of something else */
async function sittingBegun(database: Transaction<Tables>, id: string, assignmentId: string, person: PersonAtBench) {
  const { schoolId, personId, deviceId } = person;
  const found = await database
    .selectFrom("begun_sittings")
    .selectAll()
    .where("school_id", "=", schoolId)
    .where("id", "=", id)
    .executeTakeFirst();
  if (found === undefined) {
    const record = await database
      .selectFrom("records")
      .select("id")
      .where("school_id", "=", schoolId)
      .where("id", "=", id)
      .executeTakeFirst();
    if (record === undefined) return null;
    throw new SchoolError(schoolProblem("id-taken", ["sittingId"]));
  }
  const isSame = found.assignment_id === assignmentId && found.person_id === personId && found.device_id === deviceId;
  if (!isSame) throw new SchoolError(schoolProblem("id-taken", ["sittingId"]));
  return found;
}

async function countBegun(database: Transaction<Tables>, assignmentId: string, { schoolId, personId }: PersonAtBench) {
  const { begun } = await database
    .selectFrom("begun_sittings")
    .select(({ fn }) => fn.countAll().as("begun"))
    .where("school_id", "=", schoolId)
    .where("assignment_id", "=", assignmentId)
    .where("person_id", "=", personId)
    .executeTakeFirstOrThrow();
  return Number(begun);
}

/** What the chain holds of a sitting that was begun: what it was given, before anyone knew it. */
const beginningHash = (row: ReadSitting, { sheet_sha256 }: ReadAssignment): string =>
  sha256Hex(canonicalJson({ ...row, sheet_sha256 }));

async function begin(
  asked: z.infer<typeof askedSitting>,
  who: { readonly id: string; readonly bench: AskingBench },
  database: Transaction<Tables>,
  world: World,
) {
  // Held before anything is counted: two benches that begin the last attempt at once come one after the other, and nobody is
  // erased, or merged into another, meanwhile.
  const chain = await holdChain(database, who.bench.schoolId);
  const person = await personAtBench(who.id, who.bench, { database });
  const { schoolId, personId, deviceId } = person;
  const assignment = await assignmentRow(database, schoolId, asked.assignmentId);
  const before = await sittingBegun(database, asked.sittingId, asked.assignmentId, person);
  // Asked again, since the answer was lost on its way: the same sitting, the same seed, no other attempt.
  if (before !== null) return givenOf(before, assignment);
  const terms = await askedOf(database, assignment, person);
  if (terms === null) throw new SchoolError(schoolProblem("no-such-thing", []));
  const [begun, now] = [await countBegun(database, assignment.id, person), world.now()];
  const { from_at: from, until_at: until, attempts, ended_at: endedAt } = assignment;
  const state = dueState({ from, until, attempts, endedAt }, begun, now);
  if (state !== "open") throw new SchoolError(schoolProblem(REFUSALS[state], []));
  const { seed: own } = parseSheet(JSON.parse(assignment.sheet));
  const row: ReadSitting = {
    school_id: schoolId,
    id: asked.sittingId,
    assignment_id: assignment.id,
    person_id: personId,
    device_id: deviceId,
    attempt: begun + 1,
    seed: own ?? drawnSeed(world),
    seed_from: own === undefined ? "server" : "sheet",
    extra_time: terms.extraTime,
    begun_at: now,
    until_at: until,
  };
  await database.insertInto("begun_sittings").values(row).execute();
  const entry = { at: now, what: "sitting-begun", ofId: row.id, sha256: beginningHash(row, assignment) };
  await addToChain(database, chain, [entry]);
  return givenOf(row, assignment);
}

/**
 * Begins a sitting: draws its seed, counts the attempt, and gives the sheet.
 *
 * @throws {SchoolError} "no-such-thing" where it is for others, "not-begun-yet", "assignment-over", "attempts-used", "id-taken"
 */
export const beginSitting = (
  asked: z.infer<typeof askedSitting>,
  personId: string,
  bench: AskingBench,
  world: World,
): Promise<z.infer<typeof givenSitting>> =>
  world.database.transaction().execute((database) => begin(asked, { id: personId, bench }, database, world));
