import type { Kysely } from "kysely";
import type * as z from "zod/mini";
import { tidyName } from "../../school/names/foldedName";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { passwordByLink, passwordChange, signUp } from "../../school/wire/instructorsWire";
import type { firstSignUp } from "../../school/wire/peopleWire";
import { writeAudit } from "../audit/writeAudit";
import type { InvitationRow, Tables } from "../database/tables/tables";
import type { AskingInstructor } from "../http/whoAsks";
import { trying } from "../limits/guesses";
import { isPassword, passwordHash } from "../security/passwords";
import { newServerId } from "../security/secrets";
import type { World } from "../world/world";
import { takeLink } from "./links";
import { beginSignIn, type From, loginOf, type SignedIn } from "./signIns";

type Account = Pick<z.infer<typeof signUp>, "name" | "login"> & {
  readonly schoolId: string;
  readonly role: InvitationRow["role"];
  readonly hash: string;
};

/** @returns the id. @throws {SchoolError} "login-taken" */
async function makeAccount(database: Pick<Kysely<Tables>, "insertInto">, account: Account, world: World) {
  const id = newServerId(world);
  const made = await database
    .insertInto("instructors")
    .values({
      id,
      school_id: account.schoolId,
      name: tidyName(account.name),
      login: loginOf(account.login),
      password_hash: account.hash,
      role: account.role,
      created_at: world.now(),
    })
    .onConflict((conflict) => conflict.column("login").doNothing())
    .executeTakeFirst();
  if (made.numInsertedOrUpdatedRows === 0n) throw new SchoolError(schoolProblem("login-taken", ["login"]));
  return id;
}

/**
 * Makes a school and its head from the first link, and signs the head in.
 *
 * @throws {SchoolError} "link-not-valid", "login-taken", "wait-first"
 */
export async function makeSchool(asked: z.infer<typeof firstSignUp>, from: From, world: World): Promise<SignedIn> {
  const now = world.now();
  const schoolId = newServerId(world);
  const id = await trying([["link-from", from.address]], world, async () => {
    const hash = await passwordHash(asked.password, world);
    return world.database.transaction().execute(async (database) => {
      await takeLink(database, asked.token, "school", now);
      await database
        .insertInto("schools")
        .values({ id: schoolId, name: tidyName(asked.school), created_at: now })
        .execute();
      return makeAccount(database, { ...asked, schoolId, role: "head", hash }, world);
    });
  });
  return beginSignIn({ id, schoolId }, from, world);
}

/**
 * Makes one more instructor of a school from the head's link, and signs them in.
 *
 * @throws {SchoolError} "link-not-valid", "login-taken", "wait-first"
 */
export async function signUpBy(asked: z.infer<typeof signUp>, from: From, world: World): Promise<SignedIn> {
  const made = await trying([["link-from", from.address]], world, async () => {
    const hash = await passwordHash(asked.password, world);
    return world.database.transaction().execute(async (database) => {
      const { school_id, role } = await takeLink(database, asked.token, "instructor", world.now());
      const schoolId = school_id ?? "";
      const id = await makeAccount(database, { ...asked, schoolId, role, hash }, world);
      const change = { schoolId, byId: id, at: world.now(), ofId: id };
      await writeAudit(database, { ...change, action: "instructor.signed-up", details: { role } });
      return { id, schoolId };
    });
  });
  return beginSignIn(made, from, world);
}

type Instructor = Pick<AskingInstructor, "schoolId" | "instructorId">;

/** Sets a password; whoever is signed in with the old one is not any more. @param except - csrf of the browser that stays */
async function setPassword(
  database: Pick<Kysely<Tables>, "updateTable" | "deleteFrom" | "insertInto">,
  { schoolId, instructorId }: Instructor,
  { hash, except, at }: { readonly hash: string; readonly except: string; readonly at: number },
): Promise<void> {
  await database
    .updateTable("instructors")
    .set({ password_hash: hash })
    .where("id", "=", instructorId)
    .where("school_id", "=", schoolId)
    .execute();
  await database
    .deleteFrom("sign_ins")
    .where("instructor_id", "=", instructorId)
    .where("school_id", "=", schoolId)
    .where("csrf", "!=", except)
    .execute();
  const change = { schoolId, byId: instructorId, at, ofId: instructorId };
  await writeAudit(database, { ...change, action: "instructor.password-changed" });
}

/**
 * Changes the password of who asks. All their other browsers are signed out.
 *
 * @throws {SchoolError} "wrong-password", "wait-first"
 */
export async function changePassword(
  { password, next }: z.infer<typeof passwordChange>,
  who: AskingInstructor,
  world: World,
): Promise<void> {
  const { database } = world;
  await trying([["password-of", who.instructorId]], world, async () => {
    const { password_hash } = await database
      .selectFrom("instructors")
      .select("password_hash")
      .where("id", "=", who.instructorId)
      .where("school_id", "=", who.schoolId)
      .executeTakeFirstOrThrow();
    if (!(await isPassword(password, password_hash))) {
      throw new SchoolError(schoolProblem("wrong-password", ["password"]));
    }
  });
  const hash = await passwordHash(next, world);
  await database
    .transaction()
    .execute((transaction) => setPassword(transaction, who, { hash, except: who.csrf, at: world.now() }));
}

/**
 * Sets a new password by a link of the head, and signs its owner in, here alone.
 *
 * @throws {SchoolError} "link-not-valid", "wait-first"
 */
export async function passwordBy(
  { token, password }: z.infer<typeof passwordByLink>,
  from: From,
  world: World,
): Promise<SignedIn> {
  const who = await trying([["link-from", from.address]], world, async () => {
    const hash = await passwordHash(password, world);
    return world.database.transaction().execute(async (database) => {
      const { school_id, instructor_id } = await takeLink(database, token, "password", world.now());
      const found = await database
        .selectFrom("instructors")
        .select("id")
        .where("id", "=", instructor_id)
        .where("school_id", "=", school_id)
        .where("disabled_at", "is", null)
        .executeTakeFirst();
      if (found === undefined) throw new SchoolError(schoolProblem("link-not-valid", []));
      const one = { schoolId: school_id ?? "", instructorId: found.id };
      await setPassword(database, one, { hash, except: "", at: world.now() });
      return { id: found.id, schoolId: one.schoolId };
    });
  });
  return beginSignIn(who, from, world);
}
