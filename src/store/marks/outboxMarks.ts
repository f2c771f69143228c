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
  /**
   * Of the record; or of what the class has already: its tags or note were changed since, it was deleted here, or the class made
   * something else of such a change and that is to be told.
   */
  readonly state: "waiting" | "refused" | "sent" | "edited" | "deleted" | "told";
  /** Sent from then on, milliseconds since 1970; 0 where at once. */
  readonly from: number;
  /** Why it was refused. */
  readonly problem?: Problem;
  /** Version of tags and note that the class had when they were last sent; none of a record as it was received. */
  readonly base?: number;
  /** What was noted here, where something later from another bench holds. */
  readonly overruled?: { readonly tags: readonly string[]; readonly note: string };
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
  /** When the card was lost that the person was told of last, by the server's clock; left out where that never was. */
  readonly cardLostAt?: number;
  /** What was due when the server last said so, and when that was by this bench's clock; `keptDue` reads it. */
  readonly due?: { readonly list: unknown; readonly at: number } | undefined;
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
        return /sent|edited|told/.test(before[k]?.state ?? "") ? [] : [{ ...mark, from }];
      });
      const given = open.filter(({ personId }) => !ids.has(personId)).map(({ id }) => id);
      return outbox.bulkDelete(given).then(() => outbox.bulkPut(open.filter(({ personId }) => ids.has(personId))));
    });
  });
}

/** What of a record can be changed once the class has it. */
interface Noted {
  readonly tags?: readonly string[] | undefined;
  readonly note?: string | undefined;
}

const notedOf = ({ tags, note }: Noted) => `${tags}\n${note}`;

/** Whether a record takes the place of one with other tags or another note. */
export const isNotedAnew = (before: object | undefined, after: object): boolean =>
  before !== undefined && notedOf(before) !== notedOf(after);

/** Marks a record that the class has and whose tags or note were changed. To be called within a transaction. */
export const markEdited = ({ outbox }: OutboxTables, id: string): PromiseExtended<unknown> =>
  outbox.update(id, (row) => {
    if (/sent|told/.test(row.state)) Object.assign(row, { state: "edited", from: 0 });
  });

/**
 * Marks a record that is deleted here, to be deleted at the class too; also where it only waits, since it may be on its way. To be
 * called within a transaction.
 */
export const markDeleted = ({ outbox }: OutboxTables, id: string): PromiseExtended<unknown> =>
  outbox.get(id).then((row): PromiseExtended<unknown> | undefined => {
    if (row === undefined) return;
    return row.state === "refused" ? outbox.delete(id) : outbox.put({ ...row, state: "deleted", from: 0 });
  });
