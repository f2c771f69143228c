import type { Kysely } from "kysely";
import type * as z from "zod/mini";
import { CARD_LETTERS, CODE_BYTES, codeFrom, codeText } from "../../school/people/classCode";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { madeCards } from "../../school/wire/rosterWire";
import { writeAudit } from "../audit/writeAudit";
import type { Tables } from "../database/tables/tables";
import type { AskingInstructor } from "../http/whoAsks";
import { newSecret, secretHash } from "../security/secrets";
import type { World } from "../world/world";
import { lockedClass, lockedPeople, peopleIn } from "./found";

/** Whose cards of which class. */
interface CardsOf {
  readonly schoolId: string;
  readonly classId: string;
  readonly personIds: readonly string[];
}

/** Makes cards good no more. @returns how many were good */
export async function revokeCards(
  database: Kysely<Tables>,
  { schoolId, classId, personIds }: CardsOf,
  at: number,
): Promise<number> {
  if (personIds.length === 0) return 0;
  const revoked = await database
    .updateTable("cards")
    .set({ revoked_at: at })
    .where("school_id", "=", schoolId)
    .where("class_id", "=", classId)
    .where("person_id", "in", personIds)
    .where("revoked_at", "is", null)
    .executeTakeFirst();
  return Number(revoked.numUpdatedRows);
}

/** Whoever of a class has a card that is good. */
export async function withCard(database: Kysely<Tables>, { schoolId, classId }: Omit<CardsOf, "personIds">) {
  const found = await database
    .selectFrom("cards")
    .select("person_id")
    .where("school_id", "=", schoolId)
    .where("class_id", "=", classId)
    .where("revoked_at", "is", null)
    .execute();
  return new Set(found.map(({ person_id }) => person_id));
}

/** The two secrets of a card: of its QR code, and of its printed code. */
function newCard(world: World) {
  const code = codeFrom(world.chance(CODE_BYTES), CARD_LETTERS);
  if (code === null) throw new SchoolError(schoolProblem("server-failed", []));
  return { token: newSecret(world), code };
}

/**
 * Makes join cards: for these people, whose cards so far are good no more, or for everybody of the class who has none.
 * The secrets are shown this once; only their hashes are stored.
 *
 * @throws {SchoolError} "no-such-thing", "class-ended"
 */
export function makeCards(
  classId: string,
  personIds: readonly string[] | undefined,
  who: AskingInstructor,
  world: World,
): Promise<z.infer<typeof madeCards>> {
  const at = world.now();
  const ofClass = { schoolId: who.schoolId, classId };
  return world.database.transaction().execute(async (database) => {
    const { id, name } = await lockedClass(database, ofClass);
    const asked = personIds ?? (await peopleIn(database, ofClass)).map((person) => person.id);
    await lockedPeople(database, who.schoolId, asked);
    const people = await peopleIn(database, ofClass);
    const has = await withCard(database, ofClass);
    const wanted = new Set(personIds ?? people.flatMap((person) => (has.has(person.id) ? [] : [person.id])));
    const getting = people.filter((person) => wanted.has(person.id));
    if (getting.length < wanted.size) throw new SchoolError(schoolProblem("no-such-thing", ["personIds"]));
    await revokeCards(database, { ...ofClass, personIds: [...wanted] }, at);
    const cards = getting.map((person) => ({ personId: person.id, name: person.name, ...newCard(world) }));
    const rows = cards.map(({ personId, token, code }) => ({
      token_hash: secretHash(token),
      code_hash: secretHash(code),
      school_id: who.schoolId,
      class_id: classId,
      person_id: personId,
      created_at: at,
    }));
    if (rows.length > 0) await database.insertInto("cards").values(rows).execute();
    const change = { schoolId: who.schoolId, byId: who.instructorId, at, ofId: classId };
    await writeAudit(database, { ...change, action: "cards.made", details: { personIds: [...wanted] } });
    return { class: { id, name }, cards: cards.map((card) => ({ ...card, code: codeText(card.code) })) };
  });
}

/**
 * Makes the card of a person of a class good no more: it was lost, and nobody needs another now.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export async function loseCard(classId: string, personId: string, who: AskingInstructor, world: World): Promise<void> {
  const at = world.now();
  await world.database.transaction().execute(async (database) => {
    const of = { schoolId: who.schoolId, classId, personIds: [personId] };
    if ((await revokeCards(database, of, at)) === 0) throw new SchoolError(schoolProblem("no-such-thing", []));
    const change = { schoolId: who.schoolId, byId: who.instructorId, at, ofId: personId };
    await writeAudit(database, { ...change, action: "card.revoked", details: { classId } });
  });
}
