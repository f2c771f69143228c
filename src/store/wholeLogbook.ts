import { mayKeepMotion } from "../realdial/sources/sourceDescription";
import { joinContents, type LogbookContents, NO_CONTENTS, replaces } from "../records/logbookContents";
import { withOwners } from "../records/owners";
import { PERSONAL_KINDS, RECORD_KINDS, type RecordKind, type RecordOf } from "../records/records";
import type { AnyRecord } from "../school/outbox/sendableFrom";
import type { Logbook } from "./logbook";
import { attemptOf, attemptRow, type LogbookDatabase } from "./logbookDatabase";
import type { LogbookWrite } from "./logbookWrite";
import { isNotedAnew, markEdited, marksOf, markWaiting } from "./marks/outboxMarks";
import { storageError } from "./storageProblem";
import { kindWithPending, withPending } from "./withPending";

async function stored(database: LogbookDatabase): Promise<LogbookContents> {
  const [people, attempts, zeroings, jobs, sittings, sheets, settings, declarations, handoverRuns, traces] =
    await Promise.all([
      database.people.toArray(),
      database.attempts.toArray(),
      database.zeroings.toArray(),
      database.jobs.toArray(),
      database.sittings.toArray(),
      database.sheets.toArray(),
      database.settings.toArray(),
      database.declarations.toArray(),
      database.handoverRuns.toArray(),
      database.traces.toArray(),
    ]);
  return {
    records: {
      people,
      attempts: attempts.map(attemptOf),
      zeroings,
      jobs,
      sittings,
      sheets,
      settings,
      declarations,
      handoverRuns,
    },
    traces: new Map(traces.map(({ id, bytes }) => [id, bytes])),
  };
}

/**
 * Everything in the logbook, what is pending too, every record with its person.
 *
 * @throws {LogbookError} when the storage fails
 */
export async function wholeLogbook(logbook: Logbook): Promise<LogbookContents> {
  const whole = withPending(logbook.pending, await logbook.read(stored, NO_CONTENTS));
  return withOwners(whole, logbook.people.byId);
}

/** Records of one kind in the logbook, pending ones too. @throws {LogbookError} when the storage fails */
export async function recordsOfKind<Kind extends Exclude<RecordKind, "attempts">>(
  logbook: Logbook,
  kind: Kind,
): Promise<readonly RecordOf[Kind][]> {
  const kept = await logbook.read((database) => database.table<RecordOf[Kind], string>(kind).toArray(), []);
  return kindWithPending(logbook.pending, kind, kept);
}

/** What a merge did, records counted. */
export interface Merged {
  readonly added: number;
  /** Took the place of an earlier one with the same id. */
  readonly updated: number;
  /** Left as they are: the same, or later than what came. */
  readonly kept: number;
}

/** Records stored at once: between two parts the page gets to draw. */
const AT_ONCE = 500;

async function mergePart(
  database: LogbookDatabase,
  kind: RecordKind,
  part: readonly RecordOf[RecordKind][],
  traces: LogbookContents["traces"],
): Promise<Merged> {
  const existing = await database.table(kind).bulkGet(part.map(({ id }) => id));
  const isTaken = (record: RecordOf[RecordKind], i: number) => replaces(record, existing[i]);
  const updated = part.filter((record, i) => existing[i] !== undefined && isTaken(record, i)).length;
  const taken = part.filter(isTaken);
  if (kind === "attempts") {
    const attempts = taken as readonly RecordOf["attempts"][];
    await database.attempts.bulkPut(attempts.map(attemptRow));
    await database.traces.bulkPut(attempts.flatMap(({ id }) => traceRow(id, traces)));
    // Whoever wrote the file: where the hand chose that no motion is kept, none is.
    await database.traces.bulkDelete(attempts.filter((one) => !mayKeepMotion(one)).map(({ id }) => id));
  } else {
    await database.table(kind).bulkPut([...taken]);
  }
  const marks = marksOf(taken.map((record) => ({ kind, record }) as AnyRecord));
  if (marks.length > 0) await markWaiting(database, marks);
  for (const [i, record] of part.entries()) {
    if (isTaken(record, i) && isNotedAnew(existing[i], record)) await markEdited(database, record.id);
  }
  return { added: taken.length - updated, updated, kept: part.length - taken.length };
}

const traceRow = (id: string, traces: LogbookContents["traces"]) => {
  const bytes = traces.get(id);
  return bytes === undefined ? [] : [{ id, bytes }];
};

/** A sitting goes on only where it was begun: one that ran when its file was saved is broken off here. */
const standing = ({ records, traces }: LogbookContents): LogbookContents => ({
  records: {
    ...records,
    sittings: records.sittings.map((one) => (one.state === "running" ? { ...one, state: "broken-off" } : one)),
  },
  traces,
});

/**
 * Takes records into the logbook, all or none: each id once, and never in place of a later record.
 *
 * @throws {LogbookError} when the storage cannot be reached or fails; then nothing has changed
 */
export async function mergeIntoLogbook(logbook: Logbook, contents: LogbookContents): Promise<Merged> {
  const single = standing(joinContents([contents]));
  return logbook.change(async (database) => {
    const total = { added: 0, updated: 0, kept: 0 };
    for (const kind of RECORD_KINDS) {
      const list: readonly RecordOf[RecordKind][] = single.records[kind];
      for (let at = 0; at < list.length; at += AT_ONCE) {
        const { added, updated, kept } = await mergePart(database, kind, list.slice(at, at + AT_ONCE), single.traces);
        total.added += added;
        total.updated += updated;
        total.kept += kept;
      }
    }
    return total;
  });
}

async function deleteFromTables(database: LogbookDatabase, people: readonly string[]): Promise<void> {
  const attempts = await database.attempts.where("personId").anyOf(people).primaryKeys();
  await database.traces.bulkDelete(attempts);
  for (const kind of [...PERSONAL_KINDS, "settings"]) {
    await database.table(kind).where("personId").anyOf(people).delete();
  }
  await database.outbox.where("personId").anyOf(people).delete();
  await database.joinings.bulkDelete([...people]);
  await database.people.bulkDelete([...people]);
}

const belongsTo = ({ kind, record }: LogbookWrite, people: readonly string[]) => {
  if (kind === "people") return people.includes(record.id);
  return "personId" in record && record.personId !== undefined && people.includes(record.personId);
};

/**
 * Forgets an attempt under way that was put away, stored or pending, with its motion; one that has ended stays.
 *
 * @throws {LogbookError} when the storage fails; then it is still there
 */
export async function dropUnfinished(logbook: Logbook, id: string): Promise<void> {
  logbook.forget((write) => write.kind === "attempts" && write.record.id === id && write.record.isUnfinished === true);
  if (logbook.database === null) return;
  await logbook.change(async (database) => {
    if ((await database.attempts.get(id))?.isUnfinished !== true) return;
    await database.attempts.delete(id);
    await database.traces.delete(id);
  });
}

/**
 * Forgets a drill sheet, stored or pending.
 *
 * @throws {LogbookError} when the storage fails; then it is still there
 */
export async function dropSheet(logbook: Logbook, id: string): Promise<void> {
  logbook.forget((write) => write.kind === "sheets" && write.record.id === id);
  if (logbook.database !== null) await logbook.change((database) => database.sheets.delete(id));
}

/**
 * Deletes people with everything that belongs to them, all or nothing.
 *
 * @throws {LogbookError} when the storage cannot be reached or fails; then nothing has changed
 */
async function deletePeople(logbook: Logbook, people: readonly string[]): Promise<void> {
  await logbook.change((database) => deleteFromTables(database, people));
  logbook.people.forget(people);
  logbook.forget((write) => belongsTo(write, people));
}

/**
 * Deletes a person with all attempts, traces, zeroings, jobs, sittings, declarations and settings.
 *
 * @param wasExportOffered - whether the person was asked to export first
 * @throws {LogbookError} `export-not-offered`, or when the storage fails; then nothing has changed
 */
export async function deletePerson(logbook: Logbook, personId: string, wasExportOffered: boolean): Promise<void> {
  if (!wasExportOffered) throw storageError("export-not-offered", []);
  await deletePeople(logbook, [personId]);
}

/**
 * Deletes every invented person with all that belongs to them.
 *
 * @returns how many people went
 * @throws {LogbookError} when the storage fails; then nothing has changed
 */
export async function removeDemo(logbook: Logbook): Promise<number> {
  const demo = (await recordsOfKind(logbook, "people")).filter(({ isDemo }) => isDemo === true).map(({ id }) => id);
  await deletePeople(logbook, demo);
  return demo.length;
}
