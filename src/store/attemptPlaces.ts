import type { Collection } from "dexie";
import type { AttemptRecord } from "../records/attemptRecord";
import {
  type AttemptFilter,
  countAttempts,
  isBefore,
  joinedAttempts,
  type PageEnd,
  pendingAttempts,
  replacedAttempts,
  storedAttempts,
} from "./attemptQueries";
import type { Logbook } from "./logbook";
import type { AttemptRow } from "./logbookDatabase";

/** Stored attempts from a place on, latest first: skipped to from the nearer end of the list. */
async function storedFrom(
  logbook: Logbook,
  filter: AttemptFilter,
  first: number,
  size: number,
): Promise<readonly AttemptRow[]> {
  const part = (list: Collection<AttemptRow, string>, skipped: number, taken: number) =>
    list.offset(skipped).limit(taken).toArray();
  return logbook.read<readonly AttemptRow[]>(async (database) => {
    const list = () => storedAttempts(database, filter);
    // The first page waits for no count.
    const count = first === 0 ? 0 : await list().count();
    if (first <= count / 2) return part(list().reverse(), first, size);
    const end = Math.max(0, count - first);
    return (await part(list(), Math.max(0, end - size), Math.min(size, end))).reverse();
  }, []);
}

/**
 * Attempts from a place in the list on, latest first.
 *
 * @param first - place of the first of them, counted from 0 at the latest
 * @param size - how many are wanted, a whole number above 0; near the end of the list there are fewer
 * @throws {LogbookError} when the storage fails
 */
export async function attemptsAt(
  logbook: Logbook,
  filter: AttemptFilter,
  first: number,
  size: number,
): Promise<readonly AttemptRecord[]> {
  const pending = pendingAttempts(logbook, filter);
  const replaced = await replacedAttempts(logbook, filter);
  // Every pending attempt moves those after it by a place, and so does every stored one that it takes the place of.
  const slack = pending.length;
  const from = Math.max(0, first - slack);
  const stored = await storedFrom(logbook, filter, from, size + 3 * slack);
  const top = from === 0 ? undefined : stored[0];
  const isAbove = (one: PageEnd) => top !== undefined && isBefore(top, one);
  const above = pending.filter(isAbove).length - replaced.filter(isAbove).length;
  const list = joinedAttempts(
    stored,
    pending.filter((one) => !isAbove(one)),
  );
  const skipped = first - from - above;
  return list.slice(skipped, skipped + size);
}

/**
 * Place of an attempt in the list of a filter, counted from 0 at the latest.
 *
 * @throws {LogbookError} when the storage fails
 */
export async function placeOf(logbook: Logbook, filter: AttemptFilter, attempt: PageEnd): Promise<number> {
  const [all, after] = await Promise.all([
    countAttempts(logbook, filter),
    countAttempts(logbook, filter, { startedAt: attempt.startedAt, id: attempt.id }),
  ]);
  return Math.max(0, all - after - 1);
}
