import type { Kysely } from "kysely";
import type * as z from "zod/mini";
import { foldedName, tidyName } from "../../school/names/foldedName";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import type { newPerson, personChange, roster, schoolPeople } from "../../school/wire/rosterWire";
import { writeAudit } from "../audit/writeAudit";
import type { Tables } from "../database/tables/tables";
import type { AskingInstructor } from "../http/whoAsks";
import type { World } from "../world/world";
import { withCard } from "./cards";
import { foundClass, lockedClass, lockedPerson, namedIn, peopleIn } from "./found";
import { bringIn, makePerson } from "./newcomers";

/**
 * Everybody in a class.
 *
 * @throws {SchoolError} "no-such-thing"
 */
export async function rosterOf(
  classId: string,
  { schoolId }: AskingInstructor,
  { database }: World,
): Promise<z.infer<typeof roster>> {
  await foundClass(database, { schoolId, classId });
  const people = await peopleIn(database, { schoolId, classId });
  const carded = await withCard(database, { schoolId, classId });
  return {
    people: people.map((person) => ({
      id: person.id,
      name: person.name,
      extraTime: person.extra_time,
      hasPin: person.pin_hash !== null,
      isByCode: person.by_code,
      hasCard: carded.has(person.id),
      version: person.version,
      joinedAt: person.joined_at,
    })),
  };
}

/** Everybody of a school who was not erased, each once. */
export const everybodyOf = (schoolId: string, { database }: Pick<World, "database">) =>
  database
    .selectFrom("people")
    .select(["id", "name", "extra_time", "version"])
    .where("school_id", "=", schoolId)
    .where("erased_at", "is", null)
    .where("merged_into", "is", null)
    .orderBy("name")
    .orderBy("id")
    .execute();

/** Everybody of a school who was not erased, with the classes that they are in. */
export async function schoolPeopleOf(
  { schoolId }: AskingInstructor,
  world: World,
): Promise<z.infer<typeof schoolPeople>> {
  const people = await everybodyOf(schoolId, world);
  const places = await world.database
    .selectFrom("class_people")
    .select(["person_id", "class_id"])
    .where("school_id", "=", schoolId)
    .where("left_at", "is", null)
    .execute();
  const classIds = new Map<string, string[]>(people.map(({ id }) => [id, []]));
  for (const { person_id, class_id } of places) classIds.get(person_id)?.push(class_id);
  return {
    people: people.map(({ id, name, extra_time, version }) => ({
      id,
      name,
      extraTime: extra_time,
      version,
      classIds: classIds.get(id) ?? [],
    })),
  };
}

/** Whom of the school a new name means; undefined where nobody has it. */
async function meant({ name, personId }: z.infer<typeof newPerson>, schoolId: string, world: World) {
  const everybody = await everybodyOf(schoolId, world);
  const [one, another] = everybody.filter((person) =>
    personId === undefined ? foldedName(person.name) === foldedName(name) : person.id === personId,
  );
  if (another !== undefined) throw new SchoolError(schoolProblem("several-people", ["name"], { name }));
  if (personId !== undefined && one === undefined) throw new SchoolError(schoolProblem("no-such-thing", []));
  return one;
}

/**
 * Puts a name on the roster: somebody of the school who has it, or else a new person.
 *
 * @returns the person's id
 * @throws {SchoolError} "no-such-thing", "class-ended", "name-taken", "several-people"
 */
export function addPerson(
  classId: string,
  asked: z.infer<typeof newPerson>,
  who: AskingInstructor,
  world: World,
): Promise<string> {
  const ofClass = { schoolId: who.schoolId, classId };
  const name = tidyName(asked.name);
  return world.database.transaction().execute(async (database) => {
    await lockedClass(database, ofClass);
    const known = await meant(asked, who.schoolId, { ...world, database });
    if (known !== undefined) await lockedPerson(database, who.schoolId, known.id);
    const stored = known?.name ?? name;
    if ((await namedIn(database, ofClass, stored)) !== undefined) {
      throw new SchoolError(schoolProblem("name-taken", ["name"], { name: stored }));
    }
    const { extraTime } = asked;
    const personId =
      known === undefined
        ? await makePerson(database, ofClass, { name, extraTime: extraTime ?? 0 }, world)
        : await bringIn(database, ofClass, { id: known.id, extraTime: extraTime ?? null }, world);
    const change = { schoolId: who.schoolId, byId: who.instructorId, at: world.now(), ofId: personId };
    await writeAudit(database, { ...change, action: "person.added", details: { classId } });
    return personId;
  });
}

/** @throws {SchoolError} "name-taken" where another of a class that the person is in has the name */
async function needsFreeName(database: Kysely<Tables>, schoolId: string, personId: string, name: string) {
  const places = await database
    .selectFrom("class_people")
    .select("class_id")
    .where("school_id", "=", schoolId)
    .where("person_id", "=", personId)
    .where("left_at", "is", null)
    .execute();
  for (const { class_id } of places) {
    const other = await namedIn(database, { schoolId, classId: class_id }, name);
    if (other !== undefined && other.id !== personId) {
      throw new SchoolError(schoolProblem("name-taken", ["name"], { name }));
    }
  }
}

/** Other entries of the same person have the same name: benches that joined under them show it. */
async function renameMerged(database: Kysely<Tables>, schoolId: string, personId: string, name: string): Promise<void> {
  await database
    .updateTable("people")
    .set({ name })
    .where("school_id", "=", schoolId)
    .where("merged_into", "=", personId)
    .execute();
}

/** What is changed of a row. */
const changesOf = ({ name, extraTime, noPin, isKnown }: z.infer<typeof personChange>) => ({
  ...(name !== undefined && { name: tidyName(name) }),
  ...(extraTime !== undefined && { extra_time: extraTime }),
  ...(noPin === true && { pin_hash: null }),
  ...(isKnown === true && { by_code: false }),
});

/**
 * Changes a person, on top of the version that the instructor saw. Where somebody was quicker, nothing is changed.
 *
 * @throws {SchoolError} "no-such-thing", "changed-meanwhile", "name-taken"
 */
export async function changePerson(
  personId: string,
  asked: z.infer<typeof personChange>,
  who: AskingInstructor,
  world: World,
): Promise<void> {
  const at = world.now();
  await world.database.transaction().execute(async (database) => {
    const before = await lockedPerson(database, who.schoolId, personId);
    if (before.version !== asked.version) {
      const now = { name: before.name, extraTime: before.extra_time, version: before.version };
      throw new SchoolError(schoolProblem("changed-meanwhile", [], now));
    }
    const changes = changesOf(asked);
    if (changes.name !== undefined) await needsFreeName(database, who.schoolId, personId, changes.name);
    await database
      .updateTable("people")
      .set({ ...changes, updated_at: at, version: before.version + 1 })
      .where("school_id", "=", who.schoolId)
      .where("id", "=", personId)
      .execute();
    if (changes.name !== undefined) await renameMerged(database, who.schoolId, personId, changes.name);
    // Fields alone: a name in here would outlast the person's erasing.
    const details = { fields: Object.keys(asked).filter((field) => field !== "version") };
    const change = { schoolId: who.schoolId, byId: who.instructorId, at, ofId: personId };
    await writeAudit(database, { ...change, action: "person.changed", details });
  });
}
