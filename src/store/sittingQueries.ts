import type { SittingRecord } from "../records/records";
import { type SittingStanding, standingOf } from "../records/sittingStanding";
import type { PageEnd } from "./attemptQueries";
import { joinedWithPending, latestFirst, latestPage } from "./latestPage";
import type { Logbook } from "./logbook";

/** Which sittings are asked for. */
export interface SittingFilter {
  readonly personId: string;
  readonly standing?: SittingStanding | undefined;
  /** How a sitting stands; by what is stored beside its record, if left out. */
  readonly standingOf?: ((sitting: SittingRecord) => SittingStanding | null) | undefined;
  /** Part of a title, a note or a tag, in either case. */
  readonly words?: string | undefined;
}

/** Some sittings, latest first. */
export interface SittingPage {
  readonly sittings: readonly SittingRecord[];
  /** Where the next page begins, or null after the last. */
  readonly next: PageEnd | null;
}

function matches(sitting: SittingRecord, filter: SittingFilter): boolean {
  const { standing, words = "" } = filter;
  const text = [sitting.title, sitting.note ?? "", ...(sitting.tags ?? [])].join("\n").toLocaleLowerCase();
  const stands = filter.standingOf ?? standingOf;
  return (standing === undefined || stands(sitting) === standing) && text.includes(words.trim().toLocaleLowerCase());
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
  const asked = { size, before };
  const { records, next } = await latestPage(
    logbook,
    "sittings",
    filter.personId,
    (one) => matches(one, filter),
    asked,
  );
  return { sittings: records, next };
}

/** A sitting by its id, or undefined. @throws {LogbookError} when the storage fails */
export async function sittingById(logbook: Logbook, id: string): Promise<SittingRecord | undefined> {
  const stored = await logbook.read((database) => database.sittings.get(id), undefined);
  return joinedWithPending(logbook, "sittings", stored === undefined ? [] : [stored]).find((one) => one.id === id);
}

/** Every sitting that has not ended, whoever's, latest first. @throws {LogbookError} when the storage fails */
export async function runningSittings(logbook: Logbook): Promise<readonly SittingRecord[]> {
  const stored = await logbook.read((database) => database.sittings.where("state").equals("running").toArray(), []);
  return joinedWithPending(logbook, "sittings", stored)
    .filter(({ state }) => state === "running")
    .toSorted(latestFirst);
}

/** Those of some sittings that have not ended. @throws {LogbookError} when the storage fails */
export async function runningAmong(logbook: Logbook, ids: ReadonlySet<string>): Promise<ReadonlySet<string>> {
  if (ids.size === 0) return ids;
  const running = await runningSittings(logbook);
  return new Set(running.flatMap(({ id }) => (ids.has(id) ? id : [])));
}
