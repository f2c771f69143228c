import type { Kysely } from "kysely";
import type * as z from "zod/mini";
import { CARD_LETTERS, readCode } from "../../school/people/classCode";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { joinByCard, joinByCardCode, joinByCode, joined } from "../../school/wire/peopleWire";
import type { Tables } from "../database/tables/tables";
import { counted, trying } from "../limits/guesses";
import { secretHash } from "../security/secrets";
import type { World } from "../world/world";
import { benchFor, benchNow, sitDown } from "./benches";
import { lockedClass, lockedPeople, namedIn } from "./found";
import { type Into, makePerson } from "./newcomers";
import { checkPin, pinHash, setFirstPin } from "./pins";

/** Where somebody joins from. */
export interface JoiningFrom {
  /** What tries are counted for. */
  readonly address: string;
  /** The secret of the bench's cookie; empty where it has none. */
  readonly secret: string;
}

/** A bench that somebody joined at: the secret for its cookie, and the answer. */
export interface JoinedBench {
  readonly secret: string;
  readonly answer: z.infer<typeof joined>;
}

/** @throws {SchoolError} "code-not-valid", the same for every code that does not do */
async function classOfCode(typed: string, { database, now }: World): Promise<Into> {
  const found = await database
    .selectFrom("class_codes")
    .select(["school_id", "class_id"])
    .where("code", "=", readCode(typed) ?? "")
    .where("revoked_at", "is", null)
    .where("expires_at", ">", now())
    .executeTakeFirst();
  if (found === undefined) throw new SchoolError(schoolProblem("code-not-valid", ["code"]));
  return { schoolId: found.school_id, classId: found.class_id };
}

/** What somebody has of a card: the secret of its QR code, or its printed code. */
interface CardShown {
  readonly column: "token_hash" | "code_hash";
  readonly secret: string;
}

/** @throws {SchoolError} "card-not-valid", "card-code-not-valid" */
async function personOfCard({ column, secret }: CardShown, { database }: Pick<World, "database">) {
  const found = await database
    .selectFrom("cards")
    .innerJoin("people", (join) =>
      join.onRef("people.school_id", "=", "cards.school_id").onRef("people.id", "=", "person_id"),
    )
    .selectAll("people")
    .select("class_id")
    .where(column, "=", secretHash(secret))
    .where("revoked_at", "is", null)
    .where("erased_at", "is", null)
    .executeTakeFirst();
  if (found !== undefined) return found;
  throw new SchoolError(schoolProblem(column === "token_hash" ? "card-not-valid" : "card-code-not-valid", []));
}

/** Somebody who joins at a bench. */
interface Joining {
  readonly into: Into;
  readonly bench: string;
  /** Of the bench's cookie. */
  readonly secret: string;
  /** Who that is, found or made within the transaction. */
  readonly personId: (database: Kysely<Tables>) => Promise<string>;
}

async function join({ into, bench, secret, personId }: Joining, world: World): Promise<JoinedBench> {
  return world.database.transaction().execute(async (database) => {
    await lockedClass(database, into);
    const id = await personId(database);
    const { deviceId, secret: ownSecret } = await benchFor(database, { ...into, name: bench, secret }, world);
    await sitDown(database, { schoolId: into.schoolId, deviceId }, id, world.now());
    // Before anybody can be erased again: who joined is among those who are answered.
    const answer = await benchNow({ schoolId: into.schoolId, deviceId }, { ...world, database });
    const person = answer.people?.find((one) => one.id === id) ?? answer.person;
    return { secret: ownSecret, answer: { ...answer, person: { id: person.id, name: person.name } } };
  });
}

/** Whoever of a class has a name, locked until the transaction ends; undefined where nobody has it, or not any more. */
async function lockedNamed(database: Kysely<Tables>, into: Into, name: string) {
  const named = await namedIn(database, into, name);
  if (named === undefined) return undefined;
  await lockedPeople(database, into.schoolId, [named.id]);
  // They may have been erased, merged, renamed or taken out of the class while they were waited for.
  return namedIn(database, into, name);
}

/**
 * Somebody joins a class by its code, under a name: whoever of the roster has it, or else a new person, who is marked as
 * such. A PIN that comes along becomes theirs where they have none.
 *
 * @throws {SchoolError} "code-not-valid", "wrong-pin", "class-ended", "wait-first"
 */
export async function joinWithCode(
  { code, name, pin, bench }: z.infer<typeof joinByCode>,
  { address, secret }: JoiningFrom,
  world: World,
): Promise<JoinedBench> {
  const into = await trying([["code-from", address]], world, () => classOfCode(code, world));
  const person = await namedIn(world.database, into, name);
  if (person === undefined) await counted(["newcomer-from", address], world);
  else await checkPin(person, pin, world);
  const hash = person === undefined || person.pin_hash === null ? await pinHash(pin, world) : null;
  const personId = async (database: Kysely<Tables>) => {
    const now = await lockedNamed(database, into, name);
    if (now === undefined) return makePerson(database, into, { name, pinHash: hash, isByCode: true }, world);
    // Somebody else was quicker with the name, or with its PIN, than this one was asked for it.
    const isAsChecked = now.id === person?.id && now.pin_hash === person.pin_hash;
    if (!isAsChecked && now.pin_hash !== null) throw new SchoolError(schoolProblem("wrong-pin", ["pin"]));
    if (hash !== null) await setFirstPin(database, now, hash);
    return now.id;
  };
  return join({ into, bench, secret, personId }, world);
}

async function joinShowing(
  card: CardShown,
  { pin, bench }: Pick<z.infer<typeof joinByCard>, "pin" | "bench">,
  { address, secret }: JoiningFrom,
  world: World,
): Promise<JoinedBench> {
  const person = await trying([["card-from", address]], world, () => personOfCard(card, world));
  await checkPin(person, pin, world);
  const hash = person.pin_hash === null ? await pinHash(pin, world) : null;
  const into = { schoolId: person.school_id, classId: person.class_id };
  const personId = async (database: Kysely<Tables>) => {
    await lockedPeople(database, into.schoolId, [person.id]);
    // The card may have been lost, and its person erased, merged or taken out of the class, while the PIN was checked.
    const now = await personOfCard(card, { database });
    if (now.pin_hash !== person.pin_hash) throw new SchoolError(schoolProblem("wrong-pin", ["pin"]));
    if (hash !== null) await setFirstPin(database, person, hash);
    return person.id;
  };
  return join({ into, bench, secret, personId }, world);
}

/**
 * Somebody joins a class by their card. A PIN that comes along becomes theirs where they have none.
 *
 * @throws {SchoolError} "card-not-valid", "wrong-pin", "class-ended", "wait-first"
 */
export const joinWithCard = (
  { token, ...asked }: z.infer<typeof joinByCard>,
  from: JoiningFrom,
  world: World,
): Promise<JoinedBench> => joinShowing({ column: "token_hash", secret: token }, asked, from, world);

/**
 * Somebody joins a class by the code that is printed on their card: the same right, and tries count together.
 *
 * @throws {SchoolError} "card-code-not-valid", "wrong-pin", "class-ended", "wait-first"
 */
export const joinWithCardCode = (
  { code, ...asked }: z.infer<typeof joinByCardCode>,
  from: JoiningFrom,
  world: World,
): Promise<JoinedBench> =>
  joinShowing({ column: "code_hash", secret: readCode(code, CARD_LETTERS) ?? "" }, asked, from, world);
