import type { Transaction } from "kysely";
import type * as z from "zod/mini";
import { canonicalJson } from "../../drill/canonicalJson";
import { sha256Hex } from "../../drill/sha256";
import { type EditVersion, type MergedEdit, mergedEdit } from "../../school/records/mergedEdit";
import type { editsReceipt, recordEdits } from "../../school/wire/recordsWire";
import { addToChain, holdChain } from "../chain/schoolChain";
import type { Tables } from "../database/tables/tables";
import type { AskingBench } from "../http/whoAsks";
import type { World } from "../world/world";
import { peopleHere } from "./peopleHere";

type Receipt = z.infer<typeof editsReceipt>["edits"][number];

/** A version as its row has it. */
const bodyOf = ({ tags, note }: EditVersion) => canonicalJson({ tags, note });

/** Versions of the records that people at a bench may change, by record; others are not in it. */
async function versionsOf(database: Transaction<Tables>, bench: AskingBench, ids: readonly string[]) {
  const { schoolId } = bench;
  const { standing } = await peopleHere(database, bench);
  const rows = await database
    .selectFrom("records")
    .leftJoin("record_edits", (join) =>
      join.onRef("record_edits.school_id", "=", "records.school_id").onRef("record_edits.record_id", "=", "records.id"),
    )
    .select(["records.id", "person_id", "version", "at", "record_edits.body"])
    .where("records.school_id", "=", schoolId)
    .where("records.id", "in", ids)
    .orderBy("version")
    .execute();
  const versions = new Map<string, EditVersion[]>();
  for (const { id, person_id, version, at, body } of rows) {
    if (standing.get(person_id) !== "here") continue;
    const own = versions.get(id) ?? [];
    if (version !== null && at !== null && body !== null) own.push({ ...JSON.parse(body), version, at });
    versions.set(id, own);
  }
  return versions;
}

const receiptOf = (recordId: string, { holds, isTaken }: MergedEdit): Receipt => ({
  recordId,
  outcome: isTaken ? "taken" : "other-holds",
  version: holds.version,
  ...(holds.tags && { tags: [...holds.tags] }),
  ...(holds.note !== undefined && { note: holds.note }),
});

/** Takes changes of tags and notes from a bench, by the rule of `mergedEdit`; every version is chained. */
export function takeEdits(
  { edits }: z.infer<typeof recordEdits>,
  bench: AskingBench,
  { database, now }: World,
): Promise<z.infer<typeof editsReceipt>> {
  const { schoolId, deviceId } = bench;
  const at = now();
  if (edits.length === 0) return Promise.resolve({ edits: [] });
  return database.transaction().execute(async (held) => {
    const chain = await holdChain(held, schoolId);
    const ids = edits.map(({ recordId }) => recordId);
    const versions = await versionsOf(held, bench, ids);
    const added: (EditVersion & { readonly recordId: string })[] = [];
    const receipts = edits.map(({ recordId, base, ...edit }): Receipt => {
      const own = versions.get(recordId);
      if (own === undefined) return { recordId, outcome: "no-record", version: 0 };
      const merged = mergedEdit(own, edit, base, at);
      own.push(...merged.added);
      added.push(...merged.added.map((version) => ({ ...version, recordId })));
      return receiptOf(recordId, merged);
    });
    if (added.length > 0) {
      const rows = added.map((one) => ({
        school_id: schoolId,
        record_id: one.recordId,
        version: one.version,
        by_id: deviceId,
        at: one.at,
        body: bodyOf(one),
      }));
      await held.insertInto("record_edits").values(rows).execute();
    }
    const entries = added.map((one) => ({ at, what: "edit", ofId: one.recordId, sha256: sha256Hex(bodyOf(one)) }));
    await addToChain(held, chain, entries);
    return { edits: receipts };
  });
}
