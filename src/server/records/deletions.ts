import type { Transaction } from "kysely";
import type * as z from "zod/mini";
import { canonicalJson } from "../../drill/canonicalJson";
import { sha256Hex } from "../../drill/sha256";
import type { deletionsReceipt } from "../../school/wire/recordsWire";
import { writeAudit } from "../audit/writeAudit";
import { addToChain, type HeldChain, holdChain } from "../chain/schoolChain";
import type { Tables } from "../database/tables/tables";
import { sumUpAnew } from "../desk/summaries";
import type { AskingBench, AskingInstructor } from "../http/whoAsks";
import { forgetSittings } from "../sittings/forgetSittings";
import type { World } from "../world/world";
import { peopleHere } from "./peopleHere";

type Receipts = z.infer<typeof deletionsReceipt>;

/** A record that is to be deleted. */
export interface ToDelete {
  readonly id: string;
  readonly kind: string;
}

interface Deletion {
  readonly byId: string;
  readonly at: number;
}

/** Deletes records that there are, with their edits: a tombstone and a link of the chain stay of each. */
export async function deleteRecords(
  database: Transaction<Tables>,
  chain: HeldChain,
  records: readonly ToDelete[],
  { byId, at }: Deletion,
): Promise<void> {
  if (records.length === 0) return;
  const { schoolId } = chain;
  const ids = records.map(({ id }) => id);
  const stones = records.map(({ id, kind }) => ({ school_id: schoolId, record_id: id, kind, by_id: byId, at }));
  await database.insertInto("tombstones").values(stones).execute();
  await database.deleteFrom("record_edits").where("school_id", "=", schoolId).where("record_id", "in", ids).execute();
  await forgetSittings(database, schoolId, ids);
  const deleted = await database
    .deleteFrom("records")
    .where("school_id", "=", schoolId)
    .where("id", "in", ids)
    .returning("person_id")
    .execute();
  for (const personId of new Set(deleted.map(({ person_id }) => person_id))) {
    await sumUpAnew(database, schoolId, personId);
  }
  const hash = (id: string) => sha256Hex(canonicalJson(["deletion", id, byId, at]));
  await addToChain(
    database,
    chain,
    ids.map((id) => ({ at, what: "deletion", ofId: id, sha256: hash(id) })),
  );
}

const found = (database: Transaction<Tables>, schoolId: string, ids: readonly string[]) =>
  database
    .selectFrom("records")
    .select(["id", "kind", "person_id", "body"])
    .where("school_id", "=", schoolId)
    .where("id", "in", ids)
    .execute();

type FoundRecord = Awaited<ReturnType<typeof found>>[number];

/** Whether a record is a sitting, or a try of one. */
const isOfSitting = ({ kind, body }: FoundRecord): boolean =>
  kind === "sittings" || JSON.parse(body).sittingId !== undefined;

interface Asked {
  readonly schoolId: string;
  readonly byId: string;
  readonly ids: readonly string[];
  /** What may be deleted of what there is. */
  readonly judged: (
    database: Transaction<Tables>,
  ) => Promise<(record: FoundRecord) => Receipts["deletions"][number]["outcome"]>;
  readonly after: (database: Transaction<Tables>, deleted: readonly string[]) => Promise<void>;
}

function deleteAsked({ schoolId, byId, ids, judged, after }: Asked, { database, now }: World): Promise<Receipts> {
  const at = now();
  if (ids.length === 0) return Promise.resolve({ deletions: [] });
  return database.transaction().execute(async (held) => {
    const chain = await holdChain(held, schoolId);
    const rows = await found(held, schoolId, ids);
    const judge = await judged(held);
    const outcomes = new Map(rows.map((row) => [row.id, judge(row)]));
    const going = rows.filter(({ id }) => outcomes.get(id) === "deleted");
    await deleteRecords(held, chain, going, { byId, at });
    await after(
      held,
      going.map(({ id }) => id),
    );
    return { deletions: ids.map((recordId) => ({ recordId, outcome: outcomes.get(recordId) ?? "no-record" })) };
  });
}

/** Deletes what people at a bench did there on their own. Sittings and their tries stay: a result is not theirs to delete. */
export const deleteAtBench = (ids: readonly string[], bench: AskingBench, world: World): Promise<Receipts> =>
  deleteAsked(
    {
      schoolId: bench.schoolId,
      byId: bench.deviceId,
      ids,
      async judged(held) {
        const { standing } = await peopleHere(held, bench);
        return (record) => {
          if (standing.get(record.person_id) !== "here") return "no-record";
          return isOfSitting(record) ? "stays" : "deleted";
        };
      },
      after: async () => undefined,
    },
    world,
  );

/** Deletes records of a school for an instructor, whatever they are of. */
export const deleteAsInstructor = (
  ids: readonly string[],
  { schoolId, instructorId }: AskingInstructor,
  world: World,
): Promise<Receipts> =>
  deleteAsked(
    {
      schoolId,
      byId: instructorId,
      ids,
      judged: async () => () => "deleted",
      async after(held, deleted) {
        const change = { schoolId, byId: instructorId, at: world.now(), action: "record.deleted" };
        for (const ofId of deleted) await writeAudit(held, { ...change, ofId });
      },
    },
    world,
  );
