import { sql, type Transaction } from "kysely";
import type * as z from "zod/mini";
import { lookedAt, type SentLookedAt, type SoundRecord } from "../../school/records/sentRecords";
import { schoolProblem } from "../../school/schoolWords";
import type { recordsPart, recordsReceipt } from "../../school/wire/recordsWire";
import type { Problem } from "../../wording/problem";
import { addToChain, holdChain } from "../chain/schoolChain";
import type { Tables } from "../database/tables/tables";
import type { AskingBench } from "../http/whoAsks";
import type { World } from "../world/world";

type Receipt = z.infer<typeof recordsReceipt>["receipts"][number];

/** What a school has under an id: the hash of the record, or null where it was deleted. */
type Known = ReadonlyMap<string, string | null>;

const refused = (id: string | null, problem: Problem): Receipt => ({
  id,
  outcome: "refused",
  problem: { ...problem, path: problem.path.map((key) => (typeof key === "symbol" ? String(key) : key)) },
});

/** Who joined at a bench, and whether the person was erased since. */
async function peopleOf({ schoolId, deviceId }: AskingBench, { database }: World) {
  const rows = await database
    .selectFrom("device_people")
    .innerJoin("people", (join) =>
      join.onRef("people.id", "=", "person_id").onRef("people.school_id", "=", "device_people.school_id"),
    )
    .select(["person_id", "erased_at"])
    .where("device_people.school_id", "=", schoolId)
    .where("device_id", "=", deviceId)
    .execute();
  return new Map(rows.map(({ person_id, erased_at }) => [person_id, erased_at !== null]));
}

async function knownOf(database: Transaction<Tables>, schoolId: string, ids: readonly string[]): Promise<Known> {
  const rows = await database
    .selectFrom("records")
    .select(["id", (of) => of.ref("sha256").$castTo<string | null>().as("sha256")])
    .where("school_id", "=", schoolId)
    .where("id", "in", ids)
    .unionAll(
      database
        .selectFrom("tombstones")
        .select(["record_id as id", sql<string | null>`null::text`.as("sha256")])
        .where("school_id", "=", schoolId)
        .where("record_id", "in", ids),
    )
    .execute();
  return new Map(rows.map(({ id, sha256 }) => [id, sha256]));
}

/** What came for the first time: of two in one part with one id the first. */
function freshOf(records: readonly SoundRecord[], known: Known): SoundRecord[] {
  const fresh = new Map<string, SoundRecord>();
  for (const record of records) {
    if (!known.has(record.id) && !fresh.has(record.id)) fresh.set(record.id, record);
  }
  return [...fresh.values()];
}

interface Arrival {
  readonly bench: AskingBench;
  readonly now: number;
  readonly clockAhead_ms: number;
}

/** Stores what is new, and chains it, all or nothing. @returns what there was before, and what was stored */
function store(records: readonly SoundRecord[], { bench, now, clockAhead_ms }: Arrival, { database }: World) {
  const { schoolId, deviceId } = bench;
  return database.transaction().execute(async (held) => {
    const chain = await holdChain(held, schoolId);
    const ids = records.map(({ id }) => id);
    const known = await knownOf(held, schoolId, ids);
    const fresh = freshOf(records, known);
    if (fresh.length === 0) return { known, stored: new Set<SoundRecord>() };
    const rows = fresh.map((record, k) => ({
      school_id: schoolId,
      id: record.id,
      kind: record.kind,
      person_id: record.personId,
      device_id: deviceId,
      started_at: record.startedAt,
      received_at: now,
      clock_ahead_ms: clockAhead_ms,
      sha256: record.sha256,
      place: chain.end.place + 1 + k,
      body: record.body,
      motion: record.motion,
    }));
    await held.insertInto("records").values(rows).execute();
    const entries = fresh.map(({ kind, id, sha256 }) => ({ at: now, what: kind, ofId: id, sha256 }));
    await addToChain(held, chain, entries);
    return { known, stored: new Set(fresh) };
  });
}

/** What became of a record that keeps the rules. */
function receiptOf(record: SoundRecord, known: Known, stored: ReadonlySet<SoundRecord>, hashes: Known): Receipt {
  const { id } = record;
  if (stored.has(record)) return { id, outcome: "received" };
  if (known.get(id) === null) return { id, outcome: "erased" };
  const isSame = (known.get(id) ?? hashes.get(id)) === record.sha256;
  return isSame ? { id, outcome: "known" } : refused(id, schoolProblem("changed", []));
}

/**
 * Receives a part of a bench's records: each is looked at by itself, and what is new is stored and chained at once.
 *
 * Whatever is answered as received or known is in the database for good: the answer is made after the commit.
 */
export async function receiveRecords(
  part: z.infer<typeof recordsPart>,
  bench: AskingBench,
  world: World,
): Promise<z.infer<typeof recordsReceipt>> {
  const now = world.now();
  const people = await peopleOf(bench, world);
  const found = part.records.map(lookedAt).map((one): SentLookedAt | Receipt => {
    if ("problem" in one) return one;
    const isErased = people.get(one.record.personId);
    if (isErased === undefined) {
      return { id: one.record.id, problem: schoolProblem("not-joined-here", ["record", "personId"]) };
    }
    return isErased ? { id: one.record.id, outcome: "erased" } : one;
  });
  const sound = found.flatMap((one) => ("record" in one ? [one.record] : []));
  const arrival = { bench, now, clockAhead_ms: part.sentAt - now };
  const { known, stored } =
    sound.length === 0 ? { known: new Map(), stored: new Set<SoundRecord>() } : await store(sound, arrival, world);
  const hashes = new Map([...stored].map(({ id, sha256 }) => [id, sha256]));
  const receipts = found.map((one): Receipt => {
    if ("outcome" in one) return one;
    return "record" in one ? receiptOf(one.record, known, stored, hashes) : refused(one.id, one.problem);
  });
  return { now, receipts };
}
