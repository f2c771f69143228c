import Dexie from "dexie";
import type { Motion } from "../dialing/motion";
import { mayKeepMotion } from "../realdial/sources/sourceDescription";
import type { AttemptRecord } from "../records/attemptRecord";
import { decodeTrace } from "../records/motion/traceCodec";
import type { Logbook } from "./logbook";
import { type AttemptRow, attemptOf, isMiss, type LogbookDatabase } from "./logbookDatabase";

/** Which attempts are asked for. */
export interface AttemptFilter {
  readonly personId: string;
  readonly profileId?: string | undefined;
  readonly onlyMisses?: boolean | undefined;
  readonly tag?: string | undefined;
  /** Leaves out the tries of these sittings, by their ids. */
  readonly notOf?: readonly string[] | undefined;
  /** Started at this time or later, milliseconds since 1970. */
  readonly since?: number | undefined;
}

/** Where a page ended: the attempt after which the next one goes on. */
export interface PageEnd {
  readonly startedAt: number;
  readonly id: string;
}

/** Some attempts, latest first. */
export interface AttemptPage {
  readonly attempts: readonly AttemptRecord[];
  /** Where the next page begins, or null after the last. */
  readonly next: PageEnd | null;
}

/** What no index holds beside the one that is gone by. */
const matchesBeside = (attempt: AttemptRecord, { profileId, onlyMisses, notOf = [] }: AttemptFilter) =>
  (profileId === undefined || attempt.profileId === profileId) &&
  (onlyMisses !== true || isMiss(attempt)) &&
  (attempt.sittingId === undefined || !notOf.includes(attempt.sittingId));

const matches = (attempt: AttemptRecord, filter: AttemptFilter) =>
  attempt.personId === filter.personId &&
  (filter.tag === undefined || attempt.tags.includes(filter.tag)) &&
  attempt.startedAt >= (filter.since ?? 0) &&
  matchesBeside(attempt, filter);

/** Whether an attempt comes later in a list, which has the latest first. */
export const isBefore = (one: PageEnd, other: PageEnd): boolean =>
  one.startedAt < other.startedAt || (one.startedAt === other.startedAt && one.id < other.id);

const latestFirst = (one: PageEnd, other: PageEnd) => (isBefore(one, other) ? 1 : -1);

/** The index that fits a filter best, with what of the filter it holds: mostly the fewest attempts. */
function indexFor({ tag, onlyMisses, profileId }: AttemptFilter): readonly [string, readonly (string | number)[]] {
  if (tag !== undefined) return ["tagKeys", [tag]];
  if (onlyMisses === true) return ["[personId+missed+startedAt+id]", [1]];
  if (profileId !== undefined) return ["[personId+profileId+startedAt+id]", [profileId]];
  return ["[personId+startedAt+id]", []];
}

/** Whether the index for a filter holds all of it: then nothing is looked at row by row. */
function isWholeInIndex({ tag, onlyMisses, profileId, notOf = [] }: AttemptFilter): boolean {
  const held = [tag !== undefined, onlyMisses === true, profileId !== undefined].filter(Boolean).length;
  return held <= 1 && notOf.length === 0;
}

/** The attempts of a filter in the tables, by the index that fits best, oldest first, from `since` up to a page's end. */
export function storedAttempts(database: LogbookDatabase, filter: AttemptFilter, before?: PageEnd) {
  const { personId, since = 0 } = filter;
  const [index, values] = indexFor(filter);
  const low = [personId, ...values, since, Dexie.minKey];
  const high = [personId, ...values, before?.startedAt ?? Dexie.maxKey, before?.id ?? Dexie.maxKey];
  const found = database.attempts.where(index).between(low, high, true, false);
  return isWholeInIndex(filter) ? found : found.and((one) => matchesBeside(one, filter));
}

/** Attempts of a filter that wait to be stored. */
export const pendingAttempts = (logbook: Logbook, filter: AttemptFilter): AttemptRecord[] =>
  logbook.pending.flatMap((write) =>
    write.kind === "attempts" && matches(write.record, filter) ? [write.record] : [],
  );

/**
 * The stored attempts of a filter that pending ones take the place of.
 *
 * @throws {LogbookError} when the storage fails
 */
export async function replacedAttempts(logbook: Logbook, filter: AttemptFilter): Promise<AttemptRecord[]> {
  const ids = pendingAttempts(logbook, filter).map(({ id }) => id);
  if (ids.length === 0) return [];
  const stored = await logbook.read((database) => database.attempts.bulkGet(ids), []);
  return stored.flatMap((row) => (row !== undefined && matches(row, filter) ? [row] : []));
}

/** Stored attempts with the pending ones among them, latest first; a pending one takes the place of its stored one. */
export function joinedAttempts(stored: readonly AttemptRow[], pending: readonly AttemptRecord[]): AttemptRecord[] {
  const waiting = new Set(pending.map(({ id }) => id));
  return [...stored.filter(({ id }) => !waiting.has(id)).map(attemptOf), ...pending].sort(latestFirst);
}

/**
 * One page of attempts, latest first.
 *
 * @param size - attempts in a page, a whole number above 0
 * @param before - where the page before ended; the first page, if left out
 * @throws {LogbookError} when the storage fails
 */
export async function attemptPage(
  logbook: Logbook,
  filter: AttemptFilter,
  size: number,
  before?: PageEnd,
): Promise<AttemptPage> {
  // One more than asked for tells whether there is another page.
  const stored = await logbook.read(
    (database) =>
      storedAttempts(database, filter, before)
        .reverse()
        .limit(size + 1)
        .toArray(),
    [],
  );
  const pending = pendingAttempts(logbook, filter).filter((one) => before === undefined || isBefore(one, before));
  const all = joinedAttempts(stored, pending);
  const attempts = all.slice(0, size);
  const last = attempts.at(-1);
  return { attempts, next: all.length > size && last ? { startedAt: last.startedAt, id: last.id } : null };
}

/**
 * Every attempt of a filter that came to its end, oldest first, for statistics.
 *
 * @throws {LogbookError} when the storage fails
 */
export async function allAttempts(logbook: Logbook, filter: AttemptFilter): Promise<AttemptRecord[]> {
  const stored = await logbook.read((database) => storedAttempts(database, filter).toArray(), []);
  return joinedAttempts(stored, pendingAttempts(logbook, filter))
    .filter(({ isUnfinished }) => isUnfinished !== true)
    .reverse();
}

/**
 * How many attempts a filter finds.
 *
 * @param before - only those that come after this one in the list; all, if left out
 * @throws {LogbookError} when the storage fails
 */
export async function countAttempts(logbook: Logbook, filter: AttemptFilter, before?: PageEnd): Promise<number> {
  const isCounted = (one: PageEnd) => before === undefined || isBefore(one, before);
  const pending = pendingAttempts(logbook, filter).filter(isCounted);
  const [stored, replaced] = await Promise.all([
    logbook.read((database) => storedAttempts(database, filter, before).count(), 0),
    replacedAttempts(logbook, filter),
  ]);
  return stored + pending.length - replaced.filter(isCounted).length;
}

/**
 * The motion of an attempt.
 *
 * @returns undefined where none is kept
 * @throws {MotionError} `bad-trace`; {LogbookError} when the storage fails
 */
export async function motionOf(logbook: Logbook, attemptId: string): Promise<Motion | undefined> {
  const pending = logbook.pending.find((write) => write.kind === "attempts" && write.record.id === attemptId);
  if (pending?.kind === "attempts" && pending.trace) return decodeTrace(pending.trace);
  if (pending?.kind === "attempts" && !mayKeepMotion(pending.record)) return undefined;
  const row = await logbook.read((database) => database.traces.get(attemptId), undefined);
  return row && decodeTrace(row.bytes);
}
