import { sql, type Transaction } from "kysely";
import type * as z from "zod/mini";
import { lookedAt, type SoundRecord } from "../../school/records/sentRecords";
import { schoolProblem } from "../../school/schoolWords";
import type { recordsPart, recordsReceipt } from "../../school/wire/recordsWire";
import type { Problem } from "../../wording/problem";
import { addToChain, holdChain } from "../chain/schoolChain";
import type { Tables } from "../database/tables/tables";
import { sumUp } from "../desk/summaries";
import type { AskingBench } from "../http/whoAsks";
import type { World } from "../world/world";
import { type PeopleHere, peopleHere } from "./peopleHere";

type Receipt = z.infer<typeof recordsReceipt>["receipts"][number];

/** What a school has under an id: the hash of the record, or null where it was deleted. */
type Known = ReadonlyMap<string, string | null>;

const refused = (id: string | null, problem: Problem): Receipt => ({
  id,
  outcome: "refused",
  problem: { ...problem, path: problem.path.map((key) => (typeof key === "symbol" ? String(key) : key)) },
});

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

/** Of these ids, those of sittings that the server gave out. */
async function givenOf(database: Transaction<Tables>, schoolId: string, ids: readonly string[]) {
  const rows = await database
    .selectFrom("begun_sittings")
    .select("id")
    .where("school_id", "=", schoolId)
    .where("id", "in", ids)
    .execute();
  return new Set(rows.map(({ id }) => id));
}

/** What became of sound records, by what was in the database and what was stored now. */
class Arrived {
  private readonly people: PeopleHere;
  private readonly known: Known;
  private readonly given: ReadonlySet<string>;
  /** What comes for the first time, of people who joined here. */
  readonly fresh: readonly SoundRecord[];
  private readonly hashes: Known;

  /** @param given - ids of sittings that the server gave out */
  constructor(records: readonly SoundRecord[], people: PeopleHere, known: Known, given: ReadonlySet<string>) {
    this.people = people;
    this.known = known;
    this.given = given;
    const isTaken = (record: SoundRecord) => people.standing.get(record.personId) === "here" && !this.isInPlace(record);
    this.fresh = freshOf(records.filter(isTaken), known);
    this.hashes = new Map(this.fresh.map(({ id, sha256 }) => [id, sha256]));
  }

  receipt(record: SoundRecord): Receipt {
    const { id, personId, sha256 } = record;
    const whose = this.people.standing.get(personId);
    if (whose === undefined) return refused(id, schoolProblem("not-joined-here", ["record", "personId"]));
    if (whose === "erased" || this.known.get(id) === null) return { id, outcome: "erased" };
    if (this.isInPlace(record)) return refused(id, schoolProblem("in-place-of-sitting", ["record", "id"]));
    if (this.fresh.includes(record)) return { id, outcome: "received" };
    const isSame = (this.known.get(id) ?? this.hashes.get(id)) === sha256;
    return isSame ? { id, outcome: "known" } : refused(id, schoolProblem("changed", []));
  }

  /** Whether it would take the place of a sitting's record. It could be deleted as practice, and what was sent of the sitting with it. */
  private isInPlace({ kind, id }: SoundRecord): boolean {
    return kind !== "sittings" && this.given.has(id);
  }
}

interface Arrival {
  readonly bench: AskingBench;
  readonly now: number;
  readonly clockAhead_ms: number;
}

/** Stores what is new, and chains it, all or nothing. */
function store(records: readonly SoundRecord[], { bench, now, clockAhead_ms }: Arrival, { database }: World) {
  const { schoolId, deviceId } = bench;
  return database.transaction().execute(async (held) => {
    // Held before all else, so that nobody is erased and nothing deleted while it is decided what is taken.
    const chain = await holdChain(held, schoolId);
    const people = await peopleHere(held, bench);
    const ids = records.map(({ id }) => id);
    const [known, given] = [await knownOf(held, schoolId, ids), await givenOf(held, schoolId, ids)];
    const arrived = new Arrived(records, people, known, given);
    if (arrived.fresh.length === 0) return arrived;
    const rows = arrived.fresh.map((record, k) => ({
      school_id: schoolId,
      id: record.id,
      kind: record.kind,
      person_id: people.shownAs(record.personId),
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
    await sumUp(
      held,
      schoolId,
      arrived.fresh.map((record) => ({ ...record, personId: people.shownAs(record.personId) })),
    );
    const entries = arrived.fresh.map(({ kind, id, sha256 }) => ({ at: now, what: kind, ofId: id, sha256 }));
    await addToChain(held, chain, entries);
    return arrived;
  });
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
  const found = part.records.map(lookedAt);
  const sound = found.flatMap((one) => ("record" in one ? [one.record] : []));
  const arrival = { bench, now, clockAhead_ms: part.sentAt - now };
  const arrived = sound.length === 0 ? null : await store(sound, arrival, world);
  const receipts = found.flatMap((one): Receipt[] => {
    if ("problem" in one) return [refused(one.id, one.problem)];
    return arrived === null ? [] : [arrived.receipt(one.record)];
  });
  return { now, receipts };
}
