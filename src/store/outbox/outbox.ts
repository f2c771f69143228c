import Dexie from "dexie";
import { toBase64 } from "../../records/motion/base64";
import { LONGEST_MS } from "../../school/outbox/pace";
import type { Settled } from "../../school/outbox/settle";
import type { SentKind, SentRecord } from "../../school/wire/recordsWire";
import type { Logbook } from "../logbook";
import { attemptOf, type LogbookDatabase } from "../logbookDatabase";
import type { OutboxRow } from "../marks/outboxMarks";
import { beyond, inState } from "./inState";

/** States of what goes to the class: a record, or what was changed of one that is there. */
const GOING = ["waiting", "edited", "deleted"] as const;
/** Kinds whose tags and note can be changed. */
const NOTED: readonly string[] = ["attempts", "jobs", "sittings"];

/** What of the outbox a person is told. */
export interface OutboxCounts {
  readonly waiting: number;
  readonly refused: number;
}

/**
 * How many records and changes are to be sent by now, those too that wait after a failure, and how many were refused; null
 * while the tables cannot be reached.
 *
 * @param now - milliseconds since 1970
 * @throws {LogbookError} when the storage fails
 */
export async function outboxCounts(logbook: Logbook, now: number): Promise<OutboxCounts | null> {
  return logbook.read(async (database) => {
    const waiting = await Promise.all(GOING.map((state) => inState(database, state, now + LONGEST_MS).count()));
    const refused = await inState(database, "refused", Dexie.maxKey).count();
    return { waiting: waiting.reduce((a, b) => a + b), refused };
  }, null);
}

/** No zeroing that broke off is held back for longer than this, ms (`sendableFrom`), and nothing else for longer than a wait after a failure. */
const LONGEST_HELD_MS = 24 * 3600 * 1000;

const isHeldOn = ({ kind, state, from }: OutboxRow, now: number): boolean =>
  kind === "zeroings" && state === "waiting" && from <= now + LONGEST_HELD_MS;

/**
 * Has what a clock that was ahead held back until too late a moment be sent at once: else nobody would see it wait.
 *
 * @param now - milliseconds since 1970
 * @throws {LogbookError} when the storage fails
 */
export async function bringForward(logbook: Logbook, now: number): Promise<void> {
  const farOff = async (database: LogbookDatabase) => {
    const rows = await Promise.all(GOING.map((state) => beyond(database, state, now + LONGEST_MS).toArray()));
    return rows.flat().filter((row) => !isHeldOn(row, now));
  };
  if ((await logbook.read(farOff, [])).length === 0) return;
  await logbook.change(async (database) => {
    await database.outbox.bulkPut((await farOff(database)).map((row) => ({ ...row, from: 0 })));
  });
}

/** A record ready to be sent; null where it is not here any more. */
async function sentForm(database: LogbookDatabase, { id, kind }: OutboxRow): Promise<SentRecord | null> {
  if (kind === "attempts") {
    const row = await database.attempts.get(id);
    const trace = await database.traces.get(id);
    if (row === undefined) return null;
    return { kind, record: attemptOf(row), ...(trace !== undefined && { motion: toBase64(trace.bytes) }) };
  }
  const record = await database.table(kind).get(id);
  return record === undefined ? null : { kind: kind as Exclude<SentKind, "attempts">, record };
}

/**
 * The first records that are to be sent.
 *
 * @param most - records
 * @param now - milliseconds since 1970
 * @throws {LogbookError} when the storage fails
 */
export async function nextToSend(logbook: Logbook, most: number, now: number): Promise<readonly SentRecord[]> {
  const rows = await logbook.read((database) => inState(database, "waiting", now).limit(most).toArray(), []);
  const found = await logbook.read(
    (database) => Promise.all(rows.map(async (row) => [row, await sentForm(database, row)] as const)),
    [],
  );
  const gone = found.flatMap(([{ id }, record]) => (record === null ? [id] : []));
  if (gone.length > 0) await logbook.change((database) => database.outbox.bulkDelete(gone));
  return found.flatMap(([, record]) => record ?? []);
}

/** A record as the class has it, but for what was noted since: that goes as an edit. */
const isNotedSince = ({ kind }: OutboxRow, { problem }: Settled) => problem?.code === "changed" && NOTED.includes(kind);

/**
 * Takes down what became of records that were sent.
 *
 * @throws {LogbookError} when the storage fails; then they are sent again, which does no harm
 */
export async function settleSent(logbook: Logbook, settled: readonly Settled[]): Promise<void> {
  if (settled.length === 0) return;
  await logbook.change(async ({ outbox }) => {
    const rows = await outbox.bulkGet(settled.map(({ id }) => id));
    await outbox.bulkPut(
      settled.flatMap((one, k): OutboxRow[] => {
        const row = rows[k];
        // What was changed or deleted on the way is still to be sent.
        if (row?.state !== "waiting" && row?.state !== "refused") return [];
        const { state, problem } = one;
        return [isNotedSince(row, one) ? { ...row, state: "edited" } : { ...row, state, ...(problem && { problem }) }];
      }),
    );
  });
}

/** Has a record wait until a moment, milliseconds since 1970, so that others go first. @throws {LogbookError} */
export async function holdBack(logbook: Logbook, id: string, until: number): Promise<void> {
  await logbook.change((database) => database.outbox.update(id, { from: until }));
}

/** A record that the class server refused, and why. */
export interface Refused {
  readonly mark: OutboxRow;
  readonly sent: SentRecord;
}

/** Records that the class server refused, with its reasons. @throws {LogbookError} when the storage fails */
export async function refusedRecords(logbook: Logbook): Promise<readonly Refused[]> {
  return logbook.read(async (database) => {
    const marks = await inState(database, "refused", Dexie.maxKey).toArray();
    const records = await Promise.all(marks.map((mark) => sentForm(database, mark)));
    return marks.flatMap((mark, k) => {
      const sent = records[k] ?? null;
      return sent === null ? [] : [{ mark, sent }];
    });
  }, []);
}

/** Has all that was refused or held back be sent again. @throws {LogbookError} when the storage fails */
export async function sendAllAgain(logbook: Logbook): Promise<void> {
  await logbook.change(async (database) => {
    const rows = await inState(database, "refused", Dexie.maxKey).toArray();
    const held = await Promise.all(
      (["edited", "deleted"] as const).map((state) => inState(database, state, Dexie.maxKey).toArray()),
    );
    await database.outbox.bulkPut([
      ...rows.map(({ problem: _problem, ...row }) => ({ ...row, state: "waiting" as const, from: 0 })),
      ...held.flat().map((row) => ({ ...row, from: 0 })),
    ]);
  });
}
