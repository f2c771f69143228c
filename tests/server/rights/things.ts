import { canonicalJson } from "../../../src/drill/canonicalJson";
import { newSecret, newServerId, secretHash } from "../../../src/server/security/secrets";
import type { World } from "../../../src/server/world/world";
import { satRecord } from "../../support/satRecord";
import { SAT_SHEET, sentSitting } from "../support/satSitting";

const DAY_MS = 24 * 3600 * 1000;

/** Sat once: which sitting it is does not matter to who may see it. */
const RECORD = satRecord();

/** One of everything that an address or a body can name, of one school. Add yours where a route of yours names something new. */
export interface Things {
  readonly schoolId: string;
  readonly classId: string;
  readonly personId: string;
  /** Somebody else of the school, who is in no class. */
  readonly otherPersonId: string;
  /** Of a class: "ABCD-EFGH". */
  readonly code: string;
  /** Secret of the person's join card. */
  readonly card: string;
  /** The code that is printed on it. */
  readonly cardCode: string;
  readonly deviceId: string;
  /** Secret of the bench that the person joined at. */
  readonly bench: string;
  /** An instructor, whom nobody is signed in as. */
  readonly instructorId: string;
  readonly linkId: string;
  /** Secrets of links: for a school, for an instructor, for a password. */
  readonly links: { readonly school: string; readonly instructor: string; readonly password: string };
  /** A record of a sitting, the person's. */
  readonly recordId: string;
  readonly assignmentId: string;
  /** An assignment that nobody has begun. */
  readonly unbegunId: string;
  /** A sitting of the assignment, which the person began at the bench. */
  readonly sittingId: string;
  /** A form of an export. */
  readonly form: string;
  /** A sign-in of the instructor whom they are made for. */
  readonly signInId: string;
  /** A sign-in name that nobody has. */
  readonly login: string;
}

/** Signs an instructor in at one more browser. @returns its secret and id */
export async function signedInAgain(schoolId: string, instructorId: string, world: World) {
  const [secret, id, csrf] = [newSecret(world), newServerId(world), newSecret(world)];
  const at = world.now();
  await world.database
    .insertInto("sign_ins")
    .values({
      id,
      token_hash: secretHash(secret),
      school_id: schoolId,
      instructor_id: instructorId,
      csrf,
      browser: "",
      created_at: at,
      expires_at: at + DAY_MS,
    })
    .execute();
  return { id, secret, csrf };
}

/** A code of eight letters, made of an id; of a card, of sixteen. */
const codeOf = (id: string, length = 8): string =>
  [...id.slice(0, length)].map((digit) => "34679ACDEFGHJKMN"[Number.parseInt(digit, 16)]).join("");

type Begun = Pick<Things, "assignmentId" | "unbegunId" | "sittingId">;
type Own = Pick<Things, "schoolId" | "classId" | "personId" | "otherPersonId" | "deviceId" | "instructorId">;

async function makeClass(
  own: Own,
  { card, cardCode, bench }: Pick<Things, "card" | "cardCode" | "bench">,
  { database, now }: World,
) {
  const at = now();
  const { schoolId, classId, personId, deviceId } = own;
  const made = { school_id: schoolId, created_at: at };
  const place = { school_id: schoolId, class_id: classId, person_id: personId };
  await database
    .insertInto("classes")
    .values({ ...made, id: classId, name: "class" })
    .execute();
  await database
    .insertInto("people")
    .values(
      [personId, own.otherPersonId].map((id) => ({
        ...made,
        ...{ id, name: `person ${id}`, extra_time: 0, updated_at: at, version: 1 },
      })),
    )
    .execute();
  await database
    .insertInto("class_people")
    .values({ ...place, joined_at: at })
    .execute();
  await database
    .insertInto("cards")
    .values({ ...place, token_hash: secretHash(card), code_hash: secretHash(cardCode), created_at: at })
    .execute();
  await database
    .insertInto("class_codes")
    .values({ ...made, code: codeOf(classId), class_id: classId, expires_at: at + DAY_MS })
    .execute();
  await database
    .insertInto("devices")
    .values({ ...made, id: deviceId, class_id: classId, token_hash: secretHash(bench), name: "bench", seen_at: at })
    .execute();
  await database
    .insertInto("device_people")
    .values({ school_id: schoolId, device_id: deviceId, person_id: personId, joined_at: at })
    .execute();
}

async function makeLinks({ schoolId, instructorId }: Own, linkId: string, world: World): Promise<Things["links"]> {
  const at = world.now();
  const links = { school: newSecret(world), instructor: newSecret(world), password: newSecret(world) };
  const made = { created_at: at, expires_at: at + DAY_MS, role: "instructor" as const };
  await world.database
    .insertInto("invitations")
    .values([
      { ...made, id: newServerId(world), token_hash: secretHash(links.school), school_id: null },
      { ...made, id: linkId, token_hash: secretHash(links.instructor), school_id: schoolId },
    ])
    .execute();
  const forPassword = { id: newServerId(world), token_hash: secretHash(links.password), instructor_id: instructorId };
  await world.database
    .insertInto("invitations")
    .values({ ...made, ...forPassword, school_id: schoolId })
    .execute();
  return links;
}

async function makeRecord({ schoolId, personId, deviceId }: Own, recordId: string, { database, now }: World) {
  const at = now();
  const last = await database
    .selectFrom("chain")
    .select(({ fn }) => fn.max("place").as("place"))
    .where("school_id", "=", schoolId)
    .executeTakeFirst();
  const place = { school_id: schoolId, place: (last?.place ?? 0) + 1, sha256: secretHash(recordId) };
  const by = { person_id: personId, device_id: deviceId, started_at: at, received_at: at, clock_ahead_ms: 0 };
  const body = canonicalJson(sentSitting(recordId, personId, RECORD).record);
  await database
    .insertInto("records")
    .values({ ...place, ...by, id: recordId, kind: "sittings", body })
    .execute();
  await database
    .insertInto("chain")
    .values({ ...place, at, what: "sittings", of_id: recordId, link: secretHash(personId) })
    .execute();
}

async function makeAssignment(own: Own, { assignmentId, unbegunId, sittingId }: Begun, { database, now }: World) {
  const { schoolId, classId, personId, deviceId, instructorId } = own;
  const at = now();
  const times = { from_at: at, until_at: at + DAY_MS, created_at: at, updated_at: at };
  const sheet = { sheet: canonicalJson(SAT_SHEET), title: SAT_SHEET.title, sheet_sha256: secretHash("sheet") };
  const of = { school_id: schoolId, class_id: classId, by_id: instructorId };
  await database
    .insertInto("assignments")
    .values(
      [assignmentId, unbegunId].map((id) => ({
        ...of,
        ...times,
        ...sheet,
        id,
        kind: "practice" as const,
        whole_class: true,
        version: 1,
      })),
    )
    .execute();
  const by = { school_id: schoolId, assignment_id: assignmentId, person_id: personId, device_id: deviceId };
  const given = { attempt: 1, seed: 1, seed_from: "server" as const, extra_time: 0 };
  await database
    .insertInto("begun_sittings")
    .values({ ...by, ...given, id: sittingId, begun_at: at, until_at: at + DAY_MS })
    .execute();
}

/** Makes one of everything. @param forId - the instructor whose sign-in is among it */
export async function makeThings(schoolId: string, forId: string, world: World): Promise<Things> {
  const id = () => newServerId(world);
  const own = { schoolId, classId: id(), personId: id(), otherPersonId: id(), deviceId: id(), instructorId: id() };
  const secrets = { card: newSecret(world), cardCode: codeOf(own.personId, 16), bench: newSecret(world) };
  const more = { ...secrets, linkId: id(), recordId: id(), login: id() };
  const begun = { assignmentId: id(), unbegunId: id(), sittingId: id() };
  await makeClass(own, more, world);
  const instructor = { school_id: schoolId, created_at: world.now(), role: "instructor" as const, password_hash: "" };
  await world.database
    .insertInto("instructors")
    .values({ ...instructor, id: own.instructorId, name: "other", login: own.instructorId })
    .execute();
  const links = await makeLinks(own, more.linkId, world);
  await makeAssignment(own, begun, world);
  await makeRecord(own, more.recordId, world);
  const { id: signInId } = await signedInAgain(schoolId, forId, world);
  return { ...own, ...more, ...begun, form: "attempts", code: codeOf(own.classId), links, signInId };
}
