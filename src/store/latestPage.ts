import Dexie from "dexie";
import type { RecordOf } from "../records/records";
import type { PageEnd } from "./attemptQueries";
import type { Logbook } from "./logbook";
import type { LogbookDatabase } from "./logbookDatabase";
import { kindWithPending } from "./withPending";

/** Kinds of records that are listed in pages, by an index of person and beginning. */
type PagedKind = "sittings" | "jobs";

/** Some records, latest first. */
export interface LatestPage<One> {
  readonly records: readonly One[];
  /** Where the next page begins, or null after the last. */
  readonly next: PageEnd | null;
}

/** Which page is asked for. */
export interface PageAsked {
  /** Records in a page, a whole number above 0. */
  readonly size: number;
  /** Where the page before ended; the first page, if left out. */
  readonly before?: PageEnd | undefined;
}

const isBefore = (one: PageEnd, other: PageEnd) =>
  one.startedAt < other.startedAt || (one.startedAt === other.startedAt && one.id < other.id);

/** For sorting, latest first. */
export const latestFirst = (one: PageEnd, other: PageEnd): number => (isBefore(one, other) ? 1 : -1);

/** Records of a person in the tables, latest first, before a page's end. */
const rows = <Kind extends PagedKind>(database: LogbookDatabase, kind: Kind, personId: string, before?: PageEnd) =>
  database
    .table<RecordOf[Kind], string>(kind)
    .where("[personId+startedAt+id]")
    .between(
      [personId, Dexie.minKey],
      [personId, before?.startedAt ?? Dexie.maxKey, before?.id ?? Dexie.maxKey],
      true,
      false,
    )
    .reverse();

/** What is stored with what is pending: each record once. */
export function joinedWithPending<Kind extends PagedKind>(
  logbook: Logbook,
  kind: Kind,
  stored: readonly RecordOf[Kind][],
): readonly RecordOf[Kind][] {
  return kindWithPending(logbook.pending, kind, stored);
}

/**
 * One page of a person's records, latest first.
 *
 * @param matches - whether a record is asked for
 * @throws {LogbookError} when the storage fails
 */
export async function latestPage<Kind extends PagedKind>(
  logbook: Logbook,
  kind: Kind,
  personId: string,
  matches: (one: RecordOf[Kind]) => boolean,
  { size, before }: PageAsked,
): Promise<LatestPage<RecordOf[Kind]>> {
  // One more than asked for tells whether there is another page.
  const stored = await logbook.read(
    (database) =>
      rows(database, kind, personId, before)
        .filter(matches)
        .limit(size + 1)
        .toArray(),
    [],
  );
  const all = joinedWithPending(logbook, kind, stored)
    .filter((one) => one.personId === personId && matches(one) && (before === undefined || isBefore(one, before)))
    .toSorted(latestFirst);
  const records = all.slice(0, size);
  const last = records.at(-1);
  return { records, next: all.length > size && last ? { startedAt: last.startedAt, id: last.id } : null };
}
