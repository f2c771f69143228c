import type { PromiseExtended, Table } from "dexie";
import type { RecordKind } from "../../records/records";
import { type AnyRecord, sendableFrom } from "../../school/outbox/sendableFrom";
import type { Problem } from "../../wording/problem";

/** That a record is to be sent to the class, was, or was refused. The record itself stays in its own table. */
export interface OutboxRow {
  /** Of the record. */
  readonly id: string;
  readonly kind: RecordKind;
  readonly personId: string;
  readonly state: "waiting" | "refused" | "sent";
  /** Sent from then on, milliseconds since 1970; 0 where at once. */
  readonly from: number;
  /** Why it was refused. */
  readonly problem?: Problem;
}

/** Somebody of this bench who joined a class: a local person with the id that the school knows. */
export interface JoiningRow {
  /** Of the person. */
  readonly id: string;
  readonly name: string;
  readonly school: { readonly id: string; readonly name: string };
  readonly class: { readonly id: string; readonly name: string };
  /** The bench, by the id that the school knows. */
  readonly deviceId: string;
  /** Milliseconds since 1970. */
  readonly joinedAt: number;
}

/** Tables of what belongs to a class. */
interface OutboxTables {
  readonly outbox: Table<OutboxRow, string>;
  readonly joinings: Table<JoiningRow, string>;
}

/** Marks of those of some records that may be sent, now or later, whoever they are of. */
export const marksOf = (records: readonly AnyRecord[]): readonly OutboxRow[] =>
  records.flatMap((one): OutboxRow[] => {
    const from = sendableFrom(one);
    if (from === null || !("personId" in one.record)) return [];
    const { id, personId = "" } = one.record;
    return [{ id, kind: one.kind, personId, state: "waiting", from }];
  });

/**
 * Marks records of people who joined a class as waiting to be sent, and takes the mark off those of anybody else. To be called
 * in the transaction that stores them: then nothing that waits is lost with the page. What was sent stays so.
 *
 * Without `async`: deep within a transaction, waiting for a promise that is not the database's own loses it.
 *
 * @param marks - at least one
 */
export function markWaiting({ outbox, joinings }: OutboxTables, marks: readonly OutboxRow[]): PromiseExtended<unknown> {
  const people = [...new Set(marks.map(({ personId }) => personId))];
  return joinings.bulkGet(people).then((joined) => {
    const ids = new Set(joined.map((one) => one?.id));
    return outbox.bulkGet(marks.map(({ id }) => id)).then((before) => {
      const open = marks.flatMap((mark, k) => {
        const from = Math.min(mark.from, before[k]?.from ?? mark.from);
        return before[k]?.state === "sent" ? [] : [{ ...mark, from }];
      });
      const given = open.filter(({ personId }) => !ids.has(personId)).map(({ id }) => id);
      return outbox.bulkDelete(given).then(() => outbox.bulkPut(open.filter(({ personId }) => ids.has(personId))));
    });
  });
}

/** Takes off the marks of records that are gone before they were sent. To be called within a transaction. */
export const unmark = ({ outbox }: OutboxTables, ids: readonly string[]): PromiseExtended<number> =>
  outbox
    .where("id")
    .anyOf([...ids])
    .and(({ state }) => state !== "sent")
    .delete();
