import type { Transaction } from "kysely";
import { type ChainEnd, type ChainEntry, type ChainLink, chained, chainStart } from "../../school/signing/chain";
import type { Tables } from "../database/tables/tables";

/** A transaction that holds the chain of a school, and its end. */
export interface HeldChain {
  readonly schoolId: string;
  readonly end: ChainEnd;
}

/**
 * Holds the chain of a school until the transaction ends: whoever else wants to add to it waits, on any server of the
 * database. Take it before anything is looked up that decides what is added.
 */
export async function holdChain(database: Transaction<Tables>, schoolId: string): Promise<HeldChain> {
  // Weaker than "for update", so that rows which only name their school are still made meanwhile.
  await database.selectFrom("schools").select("id").where("id", "=", schoolId).forNoKeyUpdate().execute();
  const last = await database
    .selectFrom("chain")
    .select(["place", "link"])
    .where("school_id", "=", schoolId)
    .orderBy("place", "desc")
    .limit(1)
    .executeTakeFirst();
  return { schoolId, end: last ?? chainStart(schoolId) };
}

/** Adds to the end of a chain that is held. @returns the links, in the order of the entries */
export async function addToChain(
  database: Transaction<Tables>,
  { schoolId, end }: HeldChain,
  entries: readonly Omit<ChainEntry, "place">[],
): Promise<readonly ChainLink[]> {
  const links = chained(end, entries);
  if (links.length === 0) return links;
  const rows = links.map(({ ofId, ...link }) => ({ ...link, of_id: ofId, school_id: schoolId }));
  await database.insertInto("chain").values(rows).execute();
  return links;
}
