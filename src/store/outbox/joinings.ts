import { PERSONAL_KINDS, type PersonRecord } from "../../records/records";
import type { Logbook } from "../logbook";
import type { LogbookDatabase } from "../logbookDatabase";
import type { JoiningRow } from "../marks/outboxMarks";
import { markAgain } from "../moveRecords";
import { nextRevision } from "../revision";

/** Marks all that somebody has here and that was not sent: what was recorded before joining goes to the class too. */
async function markAll(database: LogbookDatabase, personId: string): Promise<void> {
  for (const kind of PERSONAL_KINDS) {
    const ids = await database.table<unknown, string>(kind).where("personId").equals(personId).primaryKeys();
    await markAgain(database, kind, ids);
  }
}

/**
 * Has somebody of a class practice on this bench: a local person with the id that the school knows.
 *
 * @returns that person
 * @throws {LogbookError} when the storage cannot be reached or fails; then nothing has changed
 */
export async function joinHere(logbook: Logbook, joining: JoiningRow): Promise<PersonRecord> {
  const { id, name, joinedAt } = joining;
  const person = await logbook.change(async (database) => {
    const before = await database.people.get(id);
    const now: PersonRecord = {
      ...(before ?? { id, createdAt: joinedAt, part: "trainee" }),
      name,
      updatedAt: joinedAt,
    };
    await database.people.put(now);
    await database.joinings.put(joining);
    await markAll(database, id);
    return now;
  });
  logbook.people.know([person]);
  return person;
}

/**
 * Has a person of this bench belong to a class no more. Records and person stay; what was not sent is marked again when the
 * person joins again.
 *
 * @throws {LogbookError} when the storage cannot be reached or fails; then nothing has changed
 */
export async function leaveHere(logbook: Logbook, personId: string): Promise<void> {
  await logbook.change(async (database) => {
    await database.joinings.delete(personId);
    await database.outbox
      .where("personId")
      .equals(personId)
      .and(({ state }) => state !== "sent")
      .delete();
  });
}

/**
 * Takes down what changed of people of a class who joined here: the name of each is that of the school.
 *
 * @returns people whose name is another now
 * @throws {LogbookError} when the storage cannot be reached or fails; then nothing has changed
 */
export async function changeJoinings(
  logbook: Logbook,
  joinings: readonly JoiningRow[],
): Promise<readonly PersonRecord[]> {
  if (joinings.length === 0) return [];
  const renamed = await logbook.change(async (database) => {
    // What is due stays as it was stored since, and whoever has left meanwhile does not come back.
    for (const { id, due: _due, ...now } of joinings) await database.joinings.update(id, now);
    const before = await database.people.bulkGet(joinings.map(({ id }) => id));
    const now = before.flatMap((person, k) => {
      const { name = "" } = joinings[k] ?? {};
      if (person === undefined || person.name === name) return [];
      return [{ ...person, name, updatedAt: person.updatedAt + 1, revision: nextRevision(undefined, person) }];
    });
    await database.people.bulkPut(now);
    return now;
  });
  logbook.people.know(renamed);
  return renamed;
}

/** Whoever of this bench joined a class, by name. @throws {LogbookError} when the storage fails */
export async function joinedHere(logbook: Logbook): Promise<readonly JoiningRow[]> {
  const joinings = await logbook.read((database) => database.joinings.toArray(), []);
  return joinings.toSorted((one, other) => one.name.localeCompare(other.name));
}
