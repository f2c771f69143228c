import type * as z from "zod/mini";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { firstSignUp, signedIn, signIn } from "../../school/wire/peopleWire";
import type { AskingInstructor } from "../http/whoAsks";
import { isPassword, passwordHash } from "../security/passwords";
import { newSecret, newServerId, secretHash } from "../security/secrets";
import type { World } from "../world/world";

/** How long a sign-in lasts: a teaching day, ms. */
const SIGN_IN_MS = 12 * 3600 * 1000;
/** How long a link that makes an instructor can be used, ms. */
const INVITATION_MS = 24 * 3600 * 1000;

/** A sign-in: the secret for the cookie, and the answer. */
export interface SignedIn {
  readonly secret: string;
  readonly answer: z.infer<typeof signedIn>;
}

const loginOf = (login: string): string => login.trim().normalize("NFKC").toLowerCase();

/** A link for one use that makes a school and its head. @returns the secret of the link */
export async function inviteFirst(world: World): Promise<string> {
  const secret = newSecret(world);
  const now = world.now();
  const row = {
    token_hash: secretHash(secret),
    role: "head" as const,
    created_at: now,
    expires_at: now + INVITATION_MS,
  };
  await world.database.insertInto("invitations").values(row).execute();
  return secret;
}

/** Who is signed in. */
export async function whoIsSignedIn(
  { instructorId, csrf }: AskingInstructor,
  { database }: World,
): Promise<z.infer<typeof signedIn>> {
  const found = await database
    .selectFrom("instructors")
    .innerJoin("schools", "schools.id", "instructors.school_id")
    .innerJoin("sign_ins", "sign_ins.instructor_id", "instructors.id")
    .select([
      "schools.id as schoolId",
      "schools.name as school",
      "instructors.id",
      "instructors.name",
      "role",
      "expires_at",
    ])
    .where("instructors.id", "=", instructorId)
    .where("csrf", "=", csrf)
    .executeTakeFirstOrThrow();
  return {
    school: { id: found.schoolId, name: found.school },
    instructor: { id: found.id, name: found.name, role: found.role },
    csrf,
    expiresAt: found.expires_at,
  };
}

async function begin(instructorId: string, schoolId: string, world: World): Promise<SignedIn> {
  const [secret, csrf] = [newSecret(world), newSecret(world)];
  const now = world.now();
  await world.database
    .insertInto("sign_ins")
    .values({
      token_hash: secretHash(secret),
      school_id: schoolId,
      instructor_id: instructorId,
      csrf,
      created_at: now,
      expires_at: now + SIGN_IN_MS,
    })
    .execute();
  return { secret, answer: await whoIsSignedIn({ role: "head", schoolId, instructorId, csrf }, world) };
}

/**
 * Makes a school and its head from the first link, and signs the head in.
 *
 * @throws {SchoolError} "link-not-valid", "login-taken"
 */
export async function makeSchool(asked: z.infer<typeof firstSignUp>, world: World): Promise<SignedIn> {
  const now = world.now();
  const [schoolId, instructorId] = [newServerId(world), newServerId(world)];
  const login = loginOf(asked.login);
  const hash = await passwordHash(asked.password, world);
  await world.database.transaction().execute(async (database) => {
    const used = await database
      .updateTable("invitations")
      .set({ used_at: now })
      .where("token_hash", "=", secretHash(asked.token))
      .where("school_id", "is", null)
      .where("used_at", "is", null)
      .where("expires_at", ">", now)
      .executeTakeFirst();
    if (used.numUpdatedRows === 0n) throw new SchoolError(schoolProblem("link-not-valid", []));
    await database.insertInto("schools").values({ id: schoolId, name: asked.school.trim(), created_at: now }).execute();
    const made = await database
      .insertInto("instructors")
      .values({
        id: instructorId,
        school_id: schoolId,
        name: asked.name.trim(),
        login,
        password_hash: hash,
        role: "head",
        created_at: now,
      })
      .onConflict((conflict) => conflict.column("login").doNothing())
      .executeTakeFirst();
    if (made.numInsertedOrUpdatedRows === 0n) throw new SchoolError(schoolProblem("login-taken", []));
  });
  return begin(instructorId, schoolId, world);
}

/**
 * Signs an instructor in. A wrong name and a wrong password take the same time and get the same answer.
 *
 * @throws {SchoolError} "wrong-sign-in"
 */
export async function signInAs(asked: z.infer<typeof signIn>, world: World): Promise<SignedIn> {
  const found = await world.database
    .selectFrom("instructors")
    .select(["id", "school_id", "password_hash"])
    .where("login", "=", loginOf(asked.login))
    .where("disabled_at", "is", null)
    .executeTakeFirst();
  if (!(await isPassword(asked.password, found?.password_hash ?? null)) || found === undefined) {
    throw new SchoolError(schoolProblem("wrong-sign-in", []));
  }
  return begin(found.id, found.school_id, world);
}

/** Ends a sign-in. */
export async function signOut(secret: string, { database }: World): Promise<void> {
  await database.deleteFrom("sign_ins").where("token_hash", "=", secretHash(secret)).execute();
}
