import type { PromiseExtended } from "dexie";
import { handOf } from "../realdial/sources/handOf";
import { PERSONAL_KINDS, type RecordOf } from "../records/records";
import { skillKey } from "../records/skill";
import type { AnyRecord } from "../school/outbox/sendableFrom";
import type { Logbook } from "./logbook";
import { attemptOf, attemptRow, type LogbookDatabase } from "./logbookDatabase";
import { markDeleted, marksOf, markWaiting } from "./marks/outboxMarks";
import { mergedKey, mergedMark } from "./mergedPeople";
import { nextRevision } from "./revision";
import { storageError } from "./storageProblem";

/** Kinds of which one record can be given to another person, or deleted, by itself. */
export type LooseKind = "attempts" | "zeroings" | "jobs";

/** Takes back what was done. @throws {LogbookError} when the storage fails; then it is still done */
export type Undo = () => Promise<void>;

const gone = () => storageError("record-gone", []);

type MovedKind = (typeof PERSONAL_KINDS)[number] | "settings";

/** Writes a record under another person, where it is still under the one it is thought to be. */
async function putUnder(
  database: LogbookDatabase,
  kind: MovedKind,
  id: string,
  from: string,
  to: string,
): Promise<boolean> {
  const row = await database.table(kind).get(id);
  if (row?.personId !== from) return false;
  const moved = { personId: to, revision: nextRevision(undefined, row) };
  const next = kind === "attempts" ? { ...attemptRow({ ...attemptOf(row), ...moved }) } : { ...row, ...moved };
  await database.table(kind).put(next);
  return true;
}

/** Records read in one go. */
const AT_ONCE = 500;

/**
 * Has records that came to another person go to the class of that person, and to no other; what was sent stays sent.
 * Without `async`, as `markWaiting`.
 */
export function markAgain(
  database: LogbookDatabase,
  kind: MovedKind,
  ids: readonly string[],
): PromiseExtended<unknown> {
  const rest = ids.slice(AT_ONCE);
  const marked = database
    .table(kind)
    .bulkGet(ids.slice(0, AT_ONCE))
    .then((records): unknown => {
      const marks = marksOf(
        records.filter((one) => one !== undefined).map((record) => ({ kind, record }) as AnyRecord),
      );
      return marks.length > 0 && markWaiting(database, marks);
    });
  return rest.length === 0 ? marked : marked.then(() => markAgain(database, kind, rest));
}

/**
 * Gives one record to another person.
 *
 * @throws {LogbookError} when the record is gone or the storage fails; then nothing has changed
 */
export async function giveRecord(
  logbook: Logbook,
  kind: LooseKind,
  { id, personId }: Pick<RecordOf[LooseKind], "id" | "personId">,
  to: string,
): Promise<Undo> {
  const move = (from: string, into: string) =>
    logbook.change(async (database) => {
      if ((await database.people.get(into)) === undefined) throw storageError("person-gone", []);
      if (!(await putUnder(database, kind, id, from, into))) throw gone();
      await markAgain(database, kind, [id]);
    });
  await move(personId, to);
  return () => move(to, personId);
}

/**
 * Deletes one record, an attempt with its motion.
 *
 * @returns brings it back as it was
 * @throws {LogbookError} when it is gone already or the storage fails; then nothing has changed
 */
export async function deleteRecord(logbook: Logbook, kind: LooseKind, id: string): Promise<Undo> {
  const { row, trace } = await logbook.change(async (database) => {
    const table = database.table(kind);
    const found = await table.get(id);
    if (found === undefined) throw gone();
    const motion = kind === "attempts" ? await database.traces.get(id) : undefined;
    await table.delete(id);
    await markDeleted(database, id);
    if (motion !== undefined) await database.traces.delete(id);
    return { row: found, trace: motion };
  });
  return () =>
    logbook.change(async (database) => {
      await database.table(kind).put({ ...row, revision: nextRevision(undefined, row) });
      if (trace !== undefined) await database.traces.put(trace);
      await markAgain(database, kind, [id]);
    });
}

/** What a merge of two people did, to be taken back. */
interface MergedPeople {
  readonly person: RecordOf["people"];
  readonly moved: ReadonlyMap<MovedKind, readonly string[]>;
  readonly declarations: readonly RecordOf["declarations"][];
}

/** A skill shown, and with which hand. */
const shownKey = (one: RecordOf["declarations"]) => `${skillKey(one)} ${handOf(one)}`;

/** Skills that both have shown stay with the one who remains; the other's are set aside. */
async function setAsideDoubles(
  database: LogbookDatabase,
  from: string,
  to: string,
): Promise<RecordOf["declarations"][]> {
  const shown = await database.declarations.where("personId").equals(to).toArray();
  const keys = new Set(shown.map(shownKey));
  const doubles = (await database.declarations.where("personId").equals(from).toArray()).filter((one) =>
    keys.has(shownKey(one)),
  );
  await database.declarations.bulkDelete(doubles.map(({ id }) => id));
  return doubles;
}

async function merge(database: LogbookDatabase, from: string, to: string): Promise<MergedPeople> {
  const person = await database.people.get(from);
  if (person === undefined || (await database.people.get(to)) === undefined) throw gone();
  if ((await database.joinings.get(from)) !== undefined) throw storageError("person-of-class", []);
  const declarations = await setAsideDoubles(database, from, to);
  const moved = new Map<MovedKind, readonly string[]>();
  for (const kind of [...PERSONAL_KINDS, "settings"] as const) {
    const ids = (await database.table(kind).where("personId").equals(from).primaryKeys()) as string[];
    for (const id of ids) await putUnder(database, kind, id, from, to);
    await markAgain(database, kind, ids);
    moved.set(kind, ids);
  }
  await database.people.delete(from);
  await database.settings.put(mergedMark(from, to, person.updatedAt));
  return { person, moved, declarations };
}

/**
 * Makes one person of two: everything of the first goes to the second, and the first is gone.
 *
 * @returns makes two of them again, each with what was theirs
 * @throws {LogbookError} when one of them is gone or the storage fails; then nothing has changed
 */
export async function mergePeople(logbook: Logbook, from: string, to: string): Promise<Undo> {
  const { person, moved, declarations } = await logbook.change((database) => merge(database, from, to));
  logbook.people.standIn(from, to);
  return async () => {
    await logbook.change(async (database) => {
      await database.settings.delete(mergedKey(from));
      await database.people.put({ ...person, revision: nextRevision(undefined, person) });
      await database.declarations.bulkPut([...declarations]);
      for (const [kind, ids] of moved) {
        for (const id of ids) await putUnder(database, kind, id, to, from);
        await markAgain(database, kind, ids);
      }
    });
    logbook.people.standIn(from, from);
  };
}
