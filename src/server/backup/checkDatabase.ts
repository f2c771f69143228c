import { type Kysely, sql, type Transaction } from "kysely";
import { toBase64 } from "../../records/motion/base64";
import { keptHash } from "../../school/records/sentRecords";
import { ChainWalk } from "../../school/signing/chain";
import { keyFingerprint } from "../../school/signing/fingerprint";
import { SENT_KINDS } from "../../school/wire/recordsWire";
import type { Problem } from "../../wording/problem";
import type { Tables } from "../database/tables/tables";
import { isPrivateHalf } from "../signing/schoolKeys";
import { serverProblem } from "../words/serverWords";
import type { KeyStore } from "../world/keyStore";

/** Links that are looked at at once. */
const PAGE = 500;

/** What checking a school came to. */
export interface SchoolCheck {
  readonly school: string;
  readonly records: number;
  readonly deleted: number;
  readonly links: number;
  readonly keys: number;
  /** What does not fit; none where all is sound. */
  readonly problems: readonly Problem[];
}

const linksFrom = (database: Transaction<Tables>, schoolId: string, after: number) =>
  database
    .selectFrom("chain")
    .leftJoin("records", (join) =>
      join.onRef("records.school_id", "=", "chain.school_id").onRef("records.place", "=", "chain.place"),
    )
    .leftJoin("tombstones", (join) =>
      join.onRef("tombstones.school_id", "=", "chain.school_id").onRef("tombstones.record_id", "=", "chain.of_id"),
    )
    .select(["chain.place", "chain.at", "what", "of_id as ofId", "chain.sha256", "link"])
    .select(["records.id", "records.kind", "records.sha256 as recordHash", "body", "motion", "record_id as deletedId"])
    .where("chain.school_id", "=", schoolId)
    .where("chain.place", ">", after)
    .orderBy("chain.place")
    .limit(PAGE);

type LinkRow = Awaited<ReturnType<ReturnType<typeof linksFrom>["execute"]>>[number];

const isOfRecord = ({ what }: LinkRow) => SENT_KINDS.some((kind) => kind === what);

/** What does not fit between a link and the record that it is of. */
function recordProblems(row: LinkRow): Problem[] {
  if (!isOfRecord(row)) return [];
  const { ofId: id, place } = row;
  if (row.id === null) return row.deletedId === null ? [serverProblem("check-record-gone", [], { id, place })] : [];
  const motion = row.motion === null ? null : toBase64(row.motion);
  const made = keptHash(row.kind ?? "", row.body ?? "", motion);
  const isSame = made === row.sha256 && row.recordHash === row.sha256 && row.id === id && row.kind === row.what;
  return isSame ? [] : [serverProblem("check-record-changed", [], { id, place })];
}

/** Every link of a school's chain with its record, in order, a page at a time. */
async function* linksOf(database: Transaction<Tables>, schoolId: string): AsyncIterable<LinkRow> {
  let after = 0;
  for (;;) {
    const rows = await linksFrom(database, schoolId, after).execute();
    yield* rows;
    if (rows.length < PAGE) return;
    after = rows.at(-1)?.place ?? after;
  }
}

async function walkChain(database: Transaction<Tables>, schoolId: string) {
  const walk = new ChainWalk(schoolId);
  const problems: Problem[] = [];
  let links = 0;
  for await (const row of linksOf(database, schoolId)) {
    links += 1;
    walk.next(row);
    problems.push(...recordProblems(row));
  }
  const { broken } = walk;
  if (broken !== null) problems.push(serverProblem(`check-chain-${broken.why}`, [], { place: broken.place }));
  return { links, problems };
}

/** Keys whose fingerprint is not theirs, and private halves that are not those of their public ones. */
async function keyProblems(database: Transaction<Tables>, schoolId: string, keys: KeyStore) {
  const rows = await database.selectFrom("signing_keys").selectAll().where("school_id", "=", schoolId).execute();
  const problems: Problem[] = [];
  for (const { id, public_key } of rows) {
    const privateKey = await keys.read(id);
    const isOwn = privateKey === null || isPrivateHalf(privateKey, public_key);
    if (keyFingerprint(public_key) !== id || !isOwn) problems.push(serverProblem("check-key", [], { id }));
  }
  return { count: rows.length, problems };
}

/** Records that have no link of the chain: nobody received them so. */
async function unchained(database: Transaction<Tables>, schoolId: string): Promise<Problem[]> {
  const { rows } = await sql<{ id: string }>`
    select id from records r where school_id = ${schoolId} and not exists
      (select 1 from chain c where c.school_id = r.school_id and c.place = r.place and c.of_id = r.id) limit 100
  `.execute(database);
  return rows.map(({ id }) => serverProblem("check-record-unchained", [], { id }));
}

async function countOf(database: Transaction<Tables>, table: "records" | "tombstones", schoolId: string) {
  const { count } = await database
    .selectFrom(table)
    .select((of) => of.fn.countAll<number>().as("count"))
    .where("school_id", "=", schoolId)
    .executeTakeFirstOrThrow();
  return Number(count);
}

/** Checks every school of a database: its chain, each record against its link, and the keys. */
export async function checkSchools(held: Transaction<Tables>, keys: KeyStore): Promise<readonly SchoolCheck[]> {
  const schools = await held.selectFrom("schools").select(["id", "name"]).orderBy("name").orderBy("id").execute();
  const checks: SchoolCheck[] = [];
  for (const { id, name } of schools) {
    const chain = await walkChain(held, id);
    const own = await keyProblems(held, id, keys);
    checks.push({
      school: name,
      records: await countOf(held, "records", id),
      deleted: await countOf(held, "tombstones", id),
      links: chain.links,
      keys: own.count,
      problems: [...chain.problems, ...(await unchained(held, id)), ...own.problems],
    });
  }
  return checks;
}

/** The same, of a database as it was at one moment. */
export const checkDatabase = (database: Kysely<Tables>, keys: KeyStore): Promise<readonly SchoolCheck[]> =>
  database
    .transaction()
    .setIsolationLevel("repeatable read")
    .execute((held) => checkSchools(held, keys));
