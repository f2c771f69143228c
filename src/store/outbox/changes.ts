import Dexie from "dexie";
import type * as z from "zod/mini";
import type { deletionsReceipt, editsReceipt, recordEdits } from "../../school/wire/recordsWire";
import type { Logbook } from "../logbook";
import { attemptRow, type LogbookDatabase } from "../logbookDatabase";
import type { OutboxRow } from "../marks/outboxMarks";
import { nextRevision } from "../revision";
import { inState } from "./inState";

type Edit = z.output<typeof recordEdits>["edits"][number];
type EditReceipt = z.output<typeof editsReceipt>["edits"][number];
type DeletionReceipt = z.output<typeof deletionsReceipt>["deletions"][number];

/** Changes of records that the class has already: of one kind, ready to be sent. */
export type ChangesPart =
  | { readonly kind: "edits"; readonly edits: readonly Edit[] }
  | { readonly kind: "deletions"; readonly records: readonly string[] };

/** What of any record can be noted, and when that was. */
interface Noted {
  readonly tags?: readonly string[];
  readonly note?: string;
  readonly updatedAt: number;
  readonly revision?: number;
}

async function editOf(database: LogbookDatabase, { id, kind, base = 0 }: OutboxRow): Promise<Edit | null> {
  const record: Noted | undefined = await database.table(kind).get(id);
  if (record === undefined) return null;
  const { tags = [], note = "", updatedAt } = record;
  return { recordId: id, base, tags: [...tags], note, at: updatedAt };
}

/**
 * The first changes that are to be sent: edits of tags and notes, then deletions; null where there are none.
 *
 * @param most - changes
 * @param now - milliseconds since 1970
 * @throws {LogbookError} when the storage fails
 */
export async function nextChanges(logbook: Logbook, most: number, now: number): Promise<ChangesPart | null> {
  const first = (state: "edited" | "deleted") =>
    logbook.read((database) => inState(database, state, now).limit(most).toArray(), []);
  const edited = await first("edited");
  const found = await logbook.read((database) => Promise.all(edited.map((row) => editOf(database, row))), []);
  const gone = edited.filter((_, k) => found[k] === null).map(({ id }) => id);
  if (gone.length > 0) await logbook.change(({ outbox }) => outbox.bulkDelete(gone));
  const edits = found.flatMap((edit) => edit ?? []);
  if (edits.length > 0) return { kind: "edits", edits };
  const deleted = await first("deleted");
  return deleted.length === 0 ? null : { kind: "deletions", records: deleted.map(({ id }) => id) };
}

/** Puts what holds at the class in place of what somebody noted here. */
async function takeOver(database: LogbookDatabase, { id, kind }: OutboxRow, holds: EditReceipt): Promise<void> {
  const record = await database.table(kind).get(id);
  const { note: _own, ...rest } = record;
  const { tags, note = "" } = holds;
  const now = {
    ...rest,
    ...(tags && { tags }),
    ...(note !== "" && { note }),
    revision: nextRevision(undefined, record),
  };
  await database.table(kind).put(kind === "attempts" ? attemptRow(now) : now);
}

async function settleEdit(database: LogbookDatabase, edit: Edit, receipt: EditReceipt): Promise<void> {
  const row = await database.outbox.get(edit.recordId);
  if (row?.state !== "edited") return;
  const record: Noted | undefined = await database.table(row.kind).get(row.id);
  const { outcome, version: base } = receipt;
  // What was noted on the way goes next, on top of what the class has now.
  if (record?.updatedAt !== edit.at) await database.outbox.put({ ...row, base });
  else if (outcome !== "other-holds") await database.outbox.put({ ...row, base, state: "sent" });
  else {
    await takeOver(database, row, receipt);
    const { tags = [], note = "" } = edit;
    await database.outbox.put({ ...row, base, state: "told", overruled: { tags, note } });
  }
}

/**
 * Takes down what became of edits. Where another one holds, that is what the record has from then on, and what was noted here
 * is kept to be told.
 *
 * @returns how many were answered for
 * @throws {LogbookError} when the storage fails; then they are sent again, which does no harm
 */
export async function settleEdits(
  logbook: Logbook,
  edits: readonly Edit[],
  receipts: readonly EditReceipt[],
): Promise<number> {
  const answered = edits.flatMap((edit, k) => {
    const receipt = receipts[k];
    return receipt?.recordId === edit.recordId ? [{ edit, receipt }] : [];
  });
  await logbook.change(async (database) => {
    for (const { edit, receipt } of answered) await settleEdit(database, edit, receipt);
  });
  return answered.length;
}

/**
 * Takes down what became of deletions: what the class keeps is told.
 *
 * @returns how many were answered for
 * @throws {LogbookError} when the storage fails; then they are sent again, which does no harm
 */
export async function settleDeletions(
  logbook: Logbook,
  records: readonly string[],
  receipts: readonly DeletionReceipt[],
): Promise<number> {
  const answered = receipts.filter(({ recordId }, k) => recordId === records[k]);
  await logbook.change(async ({ outbox }) => {
    for (const { recordId, outcome } of answered) {
      const row = await outbox.get(recordId);
      // Somebody took the deletion back on the way: then the record waits again.
      if (row?.state !== "deleted") continue;
      if (outcome === "stays") await outbox.put({ ...row, state: "told" });
      else await outbox.delete(recordId);
    }
  });
  return answered.length;
}

/** What the class made of changes otherwise than was asked, and nobody has read yet. @throws {LogbookError} */
export const toldChanges = (logbook: Logbook): Promise<readonly OutboxRow[]> =>
  logbook.read((database) => inState(database, "told", Dexie.maxKey).toArray(), []);

/** That was read. @throws {LogbookError} when the storage fails */
export async function understood(logbook: Logbook): Promise<void> {
  await logbook.change(async (database) => {
    const rows = await inState(database, "told", Dexie.maxKey).toArray();
    await database.outbox.bulkPut(
      rows.map(({ overruled: _overruled, ...row }) => ({ ...row, state: "sent" as const })),
    );
  });
}
