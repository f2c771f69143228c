import type { Kysely, Transaction } from "kysely";
import type * as z from "zod/mini";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { madeLink, openLinks } from "../../school/wire/instructorsWire";
import { writeAudit } from "../audit/writeAudit";
import type { InvitationRow, Tables } from "../database/tables/tables";
import type { AskingInstructor } from "../http/whoAsks";
import { newSecret, newServerId, secretHash } from "../security/secrets";
import type { World } from "../world/world";
import { loginOf } from "./signIns";

/** How long a link that makes an instructor, or a password, can be used, ms. */
const LINK_MS = 24 * 3600 * 1000;

/** What a link is for. */
type LinkFor = Pick<InvitationRow, "role"> & { readonly schoolId?: string; readonly instructorId?: string };

async function makeLink(
  database: Pick<Kysely<Tables>, "insertInto">,
  { role, schoolId = "", instructorId = "" }: LinkFor,
  world: World,
): Promise<z.infer<typeof madeLink>> {
  const [token, id] = [newSecret(world), newServerId(world)];
  const now = world.now();
  const row = {
    token_hash: secretHash(token),
    id,
    school_id: schoolId === "" ? null : schoolId,
    instructor_id: instructorId === "" ? null : instructorId,
    role,
    created_at: now,
    expires_at: now + LINK_MS,
  };
  await database.insertInto("invitations").values(row).execute();
  return { id, token, expiresAt: row.expires_at };
}

/** A link for one use that makes a school and its head. @returns the secret of the link */
export async function inviteFirst(world: World): Promise<string> {
  const { token } = await makeLink(world.database, { role: "head" }, world);
  return token;
}

/** A link for one use that makes one more instructor of a school. */
export function invite(
  role: InvitationRow["role"],
  { schoolId, instructorId }: AskingInstructor,
  world: World,
): Promise<z.infer<typeof madeLink>> {
  return world.database.transaction().execute(async (database) => {
    const made = await makeLink(database, { role, schoolId }, world);
    const change = { schoolId, byId: instructorId, at: world.now(), ofId: made.id };
    await writeAudit(database, { ...change, action: "instructor.invited", details: { role } });
    return made;
  });
}

/**
 * A link for one use by which an instructor of the school sets a new password.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export function linkForPassword(
  ofId: string,
  { schoolId, instructorId }: AskingInstructor,
  world: World,
): Promise<z.infer<typeof madeLink>> {
  return world.database.transaction().execute(async (database) => {
    const found = await database
      .selectFrom("instructors")
      .select("role")
      .where("id", "=", ofId)
      .where("school_id", "=", schoolId)
      .where("disabled_at", "is", null)
      .executeTakeFirst();
    if (found === undefined) throw new SchoolError(schoolProblem("no-such-thing", []));
    return passwordLink(database, { role: found.role, schoolId, instructorId: ofId }, instructorId, world);
  });
}

/** Makes a link for a new password, and writes down who made it. */
async function passwordLink(
  database: Transaction<Tables>,
  of: Required<LinkFor>,
  byId: string,
  world: World,
): Promise<z.infer<typeof madeLink>> {
  const made = await makeLink(database, of, world);
  const change = { schoolId: of.schoolId, byId, at: world.now(), ofId: of.instructorId };
  await writeAudit(database, { ...change, action: "instructor.password-link" });
  return made;
}

/** Who is said to have made a link on the machine itself. */
const MACHINE = "machine";

/**
 * A link for one use by which an instructor sets a new password, made by whoever runs the machine: a head who lost the own one has
 * nobody else to ask.
 *
 * @param login - as it is typed
 * @returns null where nobody signs in by that name
 */
export function linkFromMachine(login: string, world: World): Promise<z.infer<typeof madeLink> | null> {
  return world.database.transaction().execute(async (database) => {
    const found = await database
      .selectFrom("instructors")
      .select(["id", "school_id", "role"])
      .where("login", "=", loginOf(login))
      .where("disabled_at", "is", null)
      .executeTakeFirst();
    if (found === undefined) return null;
    const { id, school_id: schoolId, role } = found;
    return passwordLink(database, { role, schoolId, instructorId: id }, MACHINE, world);
  });
}

/** Links of a school that can be used. */
export async function linksOf(
  { schoolId }: AskingInstructor,
  { database, now }: World,
): Promise<z.infer<typeof openLinks>> {
  const found = await database
    .selectFrom("invitations")
    .leftJoin("instructors", "instructors.id", "invitations.instructor_id")
    .select([
      "invitations.id",
      "invitations.role",
      "invitations.created_at",
      "expires_at",
      "instructors.id as ofId",
      "name",
    ])
    .where("invitations.school_id", "=", schoolId)
    .where("used_at", "is", null)
    .where("expires_at", ">", now())
    .orderBy("invitations.created_at", "desc")
    .execute();
  return {
    links: found.map(({ id, role, created_at, expires_at, ofId, name }) => ({
      id,
      role,
      instructor: ofId === null || name === null ? null : { id: ofId, name },
      createdAt: created_at,
      expiresAt: expires_at,
    })),
  };
}

/**
 * Takes a link back that nobody used.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export async function revokeLink(
  linkId: string,
  { schoolId, instructorId }: AskingInstructor,
  world: World,
): Promise<void> {
  await world.database.transaction().execute(async (database) => {
    const gone = await database
      .deleteFrom("invitations")
      .where("id", "=", linkId)
      .where("school_id", "=", schoolId)
      .where("used_at", "is", null)
      .executeTakeFirst();
    if (gone.numDeletedRows === 0n) throw new SchoolError(schoolProblem("no-such-thing", []));
    const change = { schoolId, byId: instructorId, at: world.now(), ofId: linkId };
    await writeAudit(database, { ...change, action: "link.revoked" });
  });
}

/** What a link can be for: a school, one more instructor, a password. */
const KINDS = {
  school: (row: UsedLink) => row.school_id === null,
  instructor: (row: UsedLink) => row.school_id !== null && row.instructor_id === null,
  password: (row: UsedLink) => row.instructor_id !== null,
} as const;

/** What a link that was used was for. */
export type UsedLink = Pick<InvitationRow, "role"> & {
  readonly school_id: string | null;
  readonly instructor_id: string | null;
};

/**
 * Uses a link up. What is wrong with one that does not do, nobody is told.
 *
 * @param database - the transaction of what the link is for: it stays good where that fails
 * @throws {SchoolError} "link-not-valid"
 */
export async function takeLink(
  database: Pick<Kysely<Tables>, "updateTable">,
  token: string,
  kind: keyof typeof KINDS,
  now: number,
): Promise<UsedLink> {
  const used = await database
    .updateTable("invitations")
    .set({ used_at: now })
    .where("token_hash", "=", secretHash(token))
    .where("used_at", "is", null)
    .where("expires_at", ">", now)
    .returning(["school_id", "instructor_id", "role"])
    .executeTakeFirst();
  if (used === undefined || !KINDS[kind](used)) throw new SchoolError(schoolProblem("link-not-valid", []));
  return used;
}
