import Dexie from "dexie";
import type { PageEnd } from "./attemptQueries";
import type { Logbook } from "./logbook";
import { joinContents, NO_CONTENTS } from "./logbookContents";
import type { LogbookDatabase } from "./logbookDatabase";
import { contentsOfWrites } from "./logbookWrite";
import type { SittingRecord } from "./records";

/** How a sitting stands, as lists tell it. */
export type SittingStanding = "running" | "broken-off" | NonNullable<SittingRecord["verdict"]>;

/** Which sittings are asked for. */
export interface SittingFilter {
  readonly personId: string;
  readonly standing?: SittingStanding | undefined;
  /** Part of a title, a note or a tag, in either case. */
  readonly words?: string | undefined;
}

/** Some sittings, latest first. */
export interface SittingPage {
  readonly sittings: readonly SittingRecord[];
  /** Where the next page begins, or null after the last. */
  readonly next: PageEnd | null;
}

/** Id of the record of a sitting's try. @param index - of the try in the sitting, from 0 */
export const tryId = (sittingId: string, index: number): string => `${sittingId}:${index + 1}`;

/** How a sitting stands: its verdict, where it came to one. */
export function standingOf({ state, verdict = "not shown yet" }: SittingRecord): SittingStanding {
  return state === "finished" ? verdict : state;
}

function matches(sitting: SittingRecord, { personId, standing, words = "" }: SittingFilter): boolean {
  const text = [sitting.title, sitting.note ?? "", ...(sitting.tags ?? [])].join("\n").toLocaleLowerCase();
  return (
    sitting.personId === personId &&
    (standing === undefined || standingOf(sitting) === standing) &&
    text.includes(words.trim().toLocaleLowerCase())
  );
}

const isBefore = (one: PageEnd, other: PageEnd) =>
  one.startedAt < other.startedAt || (one.startedAt === other.startedAt && one.id < other.id);

/** Sittings of a person in the tables, latest first, before a page's end. */
const rows = (database: LogbookDatabase, personId: string, before: PageEnd | undefined) =>
  database.sittings
    .where("[personId+startedAt+id]")
    .between(
      [personId, Dexie.minKey],
      [personId, before?.startedAt ?? Dexie.maxKey, before?.id ?? Dexie.maxKey],
      true,
      false,
    )
    .reverse();

/** What is stored with what is pending: each sitting once, the later one where two have one id. */
function joined(logbook: Logbook, sittings: readonly SittingRecord[]): readonly SittingRecord[] {
  const part = { ...NO_CONTENTS, records: { ...NO_CONTENTS.records, sittings } };
  return joinContents([contentsOfWrites(logbook.pending), part]).records.sittings;
}

/**
 * One page of sittings, latest first.
 *
 * @param size - sittings in a page, a whole number above 0
 * @param before - where the page before ended; the first page, if left out
 * @throws {LogbookError} when the storage fails
 */
export async function sittingPage(
  logbook: Logbook,
  filter: SittingFilter,
  size: number,
  before?: PageEnd,
): Promise<SittingPage> {
  // One more than asked for tells whether there is another page.
  const stored = await logbook.read(
    (database) =>
      rows(database, filter.personId, before)
        .filter((one) => matches(one, filter))
        .limit(size + 1)
        .toArray(),
    [],
  );
  const all = joined(logbook, stored)
    .filter((one) => matches(one, filter) && (before === undefined || isBefore(one, before)))
    .toSorted((one, other) => (isBefore(one, other) ? 1 : -1));
  const sittings = all.slice(0, size);
  const last = sittings.at(-1);
  return { sittings, next: all.length > size && last ? { startedAt: last.startedAt, id: last.id } : null };
}

/** A sitting by its id, or undefined. @throws {LogbookError} when the storage fails */
export async function sittingById(logbook: Logbook, id: string): Promise<SittingRecord | undefined> {
  const stored = await logbook.read((database) => database.sittings.get(id), undefined);
  return joined(logbook, stored === undefined ? [] : [stored]).find((one) => one.id === id);
}

/** Every sitting that has not ended, whoever's, latest first. @throws {LogbookError} when the storage fails */
export async function runningSittings(logbook: Logbook): Promise<readonly SittingRecord[]> {
  const stored = await logbook.read(
    (database) => database.sittings.filter(({ state }) => state === "running").toArray(),
    [],
  );
  return joined(logbook, stored)
    .filter(({ state }) => state === "running")
    .toSorted((one, other) => (isBefore(one, other) ? 1 : -1));
}

/** Those of some sittings that have not ended. @throws {LogbookError} when the storage fails */
export async function runningAmong(logbook: Logbook, ids: ReadonlySet<string>): Promise<ReadonlySet<string>> {
  if (ids.size === 0) return ids;
  const stored = await logbook.read((database) => database.sittings.bulkGet([...ids]), []);
  const found = joined(
    logbook,
    stored.flatMap((one) => one ?? []),
  );
  return new Set(found.flatMap(({ id, state }) => (ids.has(id) && state === "running" ? id : [])));
}
