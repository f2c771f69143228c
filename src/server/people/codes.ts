import type { Kysely } from "kysely";
import type * as z from "zod/mini";
import { CODE_BYTES, codeFrom, codeText, readCode } from "../../school/people/classCode";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { classCode, codeList } from "../../school/wire/classWire";
import { writeAudit } from "../audit/writeAudit";
import type { Tables } from "../database/tables/tables";
import type { AskingInstructor } from "../http/whoAsks";
import type { World } from "../world/world";
import { foundClass, lockedClass } from "./found";

const HOUR_MS = 3600 * 1000;
/** How long a code lives where nobody says: a teaching day, hours. */
const DAY_HOURS = 12;
/** A code that is there already comes once in 10^8 times at a thousand codes; twenty in a row mean that chance is broken. */
const MOST_DRAWS = 20;

async function insertCode(
  database: Kysely<Tables>,
  row: {
    readonly school_id: string;
    readonly class_id: string;
    readonly created_at: number;
    readonly expires_at: number;
  },
  { chance }: World,
): Promise<string> {
  for (let draw = 0; draw < MOST_DRAWS; draw++) {
    const code = codeFrom(chance(CODE_BYTES));
    if (code === null) continue;
    const made = await database
      .insertInto("class_codes")
      .values({ ...row, code })
      .onConflict((conflict) => conflict.column("code").doNothing())
      .executeTakeFirst();
    if (made.numInsertedOrUpdatedRows === 1n) return code;
  }
  throw new SchoolError(schoolProblem("server-failed", []));
}

/**
 * Makes a code by which one joins a class. Others of the class stay good.
 *
 * @throws {SchoolError} "no-such-thing", "class-ended"
 */
export function makeCode(
  classId: string,
  hours: number | undefined,
  who: AskingInstructor,
  world: World,
): Promise<z.infer<typeof classCode>> {
  const now = world.now();
  const expiresAt = now + (hours ?? DAY_HOURS) * HOUR_MS;
  return world.database.transaction().execute(async (database) => {
    await lockedClass(database, { schoolId: who.schoolId, classId });
    const row = { school_id: who.schoolId, class_id: classId, created_at: now, expires_at: expiresAt };
    const code = await insertCode(database, row, world);
    const change = { schoolId: who.schoolId, byId: who.instructorId, at: now, ofId: classId };
    await writeAudit(database, { ...change, action: "class.code-made", details: { expiresAt } });
    return { code: codeText(code), createdAt: now, expiresAt };
  });
}

/**
 * Codes of a class that are good now.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export async function codesOf(
  classId: string,
  { schoolId }: AskingInstructor,
  { database, now }: World,
): Promise<z.infer<typeof codeList>> {
  await foundClass(database, { schoolId, classId });
  const found = await database
    .selectFrom("class_codes")
    .select(["code", "created_at", "expires_at"])
    .where("school_id", "=", schoolId)
    .where("class_id", "=", classId)
    .where("revoked_at", "is", null)
    .where("expires_at", ">", now())
    .orderBy("created_at", "desc")
    .execute();
  return {
    codes: found.map(({ code, created_at, expires_at }) => ({
      code: codeText(code),
      createdAt: created_at,
      expiresAt: expires_at,
    })),
  };
}

/**
 * Lets nobody join by a code any more. Whoever joined by it stays.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export async function revokeCode(classId: string, typed: string, who: AskingInstructor, world: World): Promise<void> {
  const at = world.now();
  await world.database.transaction().execute(async (database) => {
    const revoked = await database
      .updateTable("class_codes")
      .set({ revoked_at: at })
      .where("school_id", "=", who.schoolId)
      .where("class_id", "=", classId)
      .where("code", "=", readCode(typed) ?? "")
      .where("revoked_at", "is", null)
      .executeTakeFirst();
    if (revoked.numUpdatedRows === 0n) throw new SchoolError(schoolProblem("no-such-thing", []));
    const change = { schoolId: who.schoolId, byId: who.instructorId, at, ofId: classId };
    await writeAudit(database, { ...change, action: "class.code-revoked" });
  });
}
