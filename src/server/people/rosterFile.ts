import type { Kysely } from "kysely";
import type * as z from "zod/mini";
import { previewRoster } from "../../school/people/rosterCsv";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { confirmedRoster, PreviewRow, rosterPreview, takenRoster } from "../../school/wire/rosterWire";
import { writeAudit } from "../audit/writeAudit";
import type { Tables } from "../database/tables/tables";
import type { AskingInstructor } from "../http/whoAsks";
import { secretHash } from "../security/secrets";
import type { World } from "../world/world";
import { foundClass, lockedClass, lockedPeople, peopleIn } from "./found";
import { bringIn, makePerson, setExtraTime } from "./newcomers";
import { everybodyOf } from "./roster";

interface OfClass {
  readonly schoolId: string;
  readonly classId: string;
}

async function preview(
  csv: string,
  ofClass: OfClass,
  database: Kysely<Tables>,
): Promise<z.infer<typeof rosterPreview>> {
  const everybody = await everybodyOf(ofClass.schoolId, { database });
  const here = new Set((await peopleIn(database, ofClass)).map(({ id }) => id));
  const known = everybody.map(({ id, name, extra_time }) => ({
    id,
    name,
    extraTime: extra_time,
    isInClass: here.has(id),
  }));
  const rows = previewRoster(csv, known);
  return { rows, seen: secretHash(JSON.stringify([ofClass.classId, rows])) };
}

/**
 * What would become of each row of a file of names. Nothing is written.
 *
 * @throws {SchoolError} "no-such-thing", "too-many-rows"
 */
export async function previewFile(
  classId: string,
  csv: string,
  { schoolId }: AskingInstructor,
  { database }: World,
): Promise<z.infer<typeof rosterPreview>> {
  await foundClass(database, { schoolId, classId });
  return preview(csv, { schoolId, classId }, database);
}

async function take(row: PreviewRow, ofClass: OfClass, database: Kysely<Tables>, world: World): Promise<void> {
  if (row.outcome === "refused") return;
  if (row.outcome === "added") {
    await makePerson(database, ofClass, row, world);
    return;
  }
  const { personId: id, extraTime } = row;
  if (!row.isInClass) await bringIn(database, ofClass, { id, extraTime }, world);
  else if (extraTime !== null) await setExtraTime(database, ofClass.schoolId, { id, extraTime }, world);
}

/**
 * Takes a file of names that an instructor has looked at: all of it or, where it would come to something else by now, nothing.
 *
 * @throws {SchoolError} "no-such-thing", "class-ended", "roster-changed", "too-many-rows"
 */
export function takeFile(
  classId: string,
  { csv, seen }: z.infer<typeof confirmedRoster>,
  who: AskingInstructor,
  world: World,
): Promise<z.infer<typeof takenRoster>> {
  const ofClass = { schoolId: who.schoolId, classId };
  return world.database.transaction().execute(async (database) => {
    await lockedClass(database, ofClass);
    const now = await preview(csv, ofClass, database);
    if (now.seen !== seen) throw new SchoolError(schoolProblem("roster-changed", []));
    const known = now.rows.flatMap((row) => (row.outcome === "matched" ? [row.personId] : []));
    const there = await lockedPeople(database, who.schoolId, known);
    if (there.size < known.length) throw new SchoolError(schoolProblem("roster-changed", []));
    for (const row of now.rows) await take(row, ofClass, database, world);
    const so = (outcome: PreviewRow["outcome"]) => now.rows.filter((row) => row.outcome === outcome).length;
    const taken = { added: so("added"), matched: so("matched"), refused: so("refused") };
    const change = { schoolId: who.schoolId, byId: who.instructorId, at: world.now(), ofId: classId };
    await writeAudit(database, { ...change, action: "class.roster-taken", details: taken });
    return taken;
  });
}
