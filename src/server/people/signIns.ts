import type * as z from "zod/mini";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { signInList } from "../../school/wire/instructorsWire";
import type { signedIn, signIn } from "../../school/wire/peopleWire";
import type { AskingInstructor } from "../http/whoAsks";
import { trying } from "../limits/guesses";
import { isPassword } from "../security/passwords";
import { newSecret, newServerId, secretHash } from "../security/secrets";
import type { World } from "../world/world";

/** How long a sign-in lasts: a teaching day, ms. */
const SIGN_IN_MS = 12 * 3600 * 1000;
/** Letters of what a browser says that it is. */
const LONGEST_BROWSER = 200;

/** Where an instructor signs in from. */
export interface From {
  /** What tries are counted for. */
  readonly address: string;
  /** What the browser says that it is. */
  readonly browser: string;
}

/** A sign-in: the secret for the cookie, and the answer. */
export interface SignedIn {
  readonly secret: string;
  readonly answer: z.infer<typeof signedIn>;
}

/** A sign-in name as it is stored and compared. */
export const loginOf = (login: string): string => login.trim().normalize("NFKC").toLowerCase();

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

/** Signs somebody in who has shown that they may. */
export async function beginSignIn(
  { id: instructorId, schoolId }: { readonly id: string; readonly schoolId: string },
  { browser }: From,
  world: World,
): Promise<SignedIn> {
  const [secret, csrf] = [newSecret(world), newSecret(world)];
  const now = world.now();
  await world.database
    .insertInto("sign_ins")
    .values({
      token_hash: secretHash(secret),
      id: newServerId(world),
      browser: browser.slice(0, LONGEST_BROWSER),
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
 * Signs an instructor in. A wrong name and a wrong password take the same time and get the same answer.
 *
 * @throws {SchoolError} "wrong-sign-in", "wait-first"
 */
export async function signInAs(asked: z.infer<typeof signIn>, from: From, world: World): Promise<SignedIn> {
  const login = loginOf(asked.login);
  const found = await trying(
    [
      ["password-from", from.address],
      ["password-of", login],
    ],
    world,
    async () => {
      const one = await world.database
        .selectFrom("instructors")
        .select(["id", "school_id", "password_hash"])
        .where("login", "=", login)
        .where("disabled_at", "is", null)
        .executeTakeFirst();
      if (!(await isPassword(asked.password, one?.password_hash ?? null)) || one === undefined) {
        throw new SchoolError(schoolProblem("wrong-sign-in", []));
      }
      return one;
    },
  );
  return beginSignIn({ id: found.id, schoolId: found.school_id }, from, world);
}

/** Ends a sign-in. */
export async function signOut(secret: string, { database }: World): Promise<void> {
  await database.deleteFrom("sign_ins").where("token_hash", "=", secretHash(secret)).execute();
}

/** Where an instructor is signed in now, the latest first. */
export async function signInsOf(
  { schoolId, instructorId, csrf }: AskingInstructor,
  { database, now }: World,
): Promise<z.infer<typeof signInList>> {
  const found = await database
    .selectFrom("sign_ins")
    .select(["id", "browser", "created_at", "expires_at", "csrf"])
    .where("school_id", "=", schoolId)
    .where("instructor_id", "=", instructorId)
    .where("expires_at", ">", now())
    .orderBy("created_at", "desc")
    .execute();
  return {
    signIns: found.map((one) => ({
      id: one.id,
      browser: one.browser,
      createdAt: one.created_at,
      expiresAt: one.expires_at,
      isThis: one.csrf === csrf,
    })),
  };
}

/**
 * Ends a sign-in of the instructor's own.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export async function endSignIn(
  signInId: string,
  { schoolId, instructorId }: AskingInstructor,
  { database }: World,
): Promise<void> {
  const ended = await database
    .deleteFrom("sign_ins")
    .where("id", "=", signInId)
    .where("school_id", "=", schoolId)
    .where("instructor_id", "=", instructorId)
    .executeTakeFirst();
  if (ended.numDeletedRows === 0n) throw new SchoolError(schoolProblem("no-such-thing", []));
}
