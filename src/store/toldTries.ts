import type { AttemptRecord } from "../records/attemptRecord";
import type { JobRecord } from "../records/jobRecord";
import type { ZeroingRecord } from "../records/records";
import { sittingOf } from "../records/tryOfSitting";
import { type AttemptFilter, allAttempts } from "./attemptQueries";
import type { Logbook } from "./logbook";
import { runningSittings } from "./sittingQueries";
import { recordsOfKind } from "./wholeLogbook";

/**
 * Tries without those of a sitting under way: what these came to is told when it has ended, and no figure, list of
 * misses or declaration tells it before.
 */

/** Ids of the sittings of a person that are under way. @throws {LogbookError} when the storage fails */
export async function untoldSittings(logbook: Logbook, personId: string): Promise<readonly string[]> {
  const running = await runningSittings(logbook);
  return running.filter((one) => one.personId === personId).map(({ id }) => id);
}

/** Attempts of a filter that may be told, oldest first. @throws {LogbookError} when the storage fails */
export async function toldAttempts(logbook: Logbook, filter: AttemptFilter): Promise<AttemptRecord[]> {
  return allAttempts(logbook, { ...filter, notOf: filter.notOf ?? (await untoldSittings(logbook, filter.personId)) });
}

/**
 * Jobs of a person that may be told, oldest first.
 *
 * @param known - the sittings under way, where they are known already
 * @throws {LogbookError} when the storage fails
 */
export async function toldJobs(logbook: Logbook, personId: string, known?: readonly string[]): Promise<JobRecord[]> {
  const untold = known ?? (await untoldSittings(logbook, personId));
  return (await recordsOfKind(logbook, "jobs"))
    .filter((one) => one.personId === personId && (one.sittingId === undefined || !untold.includes(one.sittingId)))
    .sort((one, other) => one.startedAt - other.startedAt || (one.id < other.id ? -1 : 1));
}

/** Zeroings of a person that may be told. @throws {LogbookError} when the storage fails */
export async function toldZeroings(logbook: Logbook, personId: string): Promise<ZeroingRecord[]> {
  const untold: readonly unknown[] = await untoldSittings(logbook, personId);
  return (await recordsOfKind(logbook, "zeroings")).filter(
    (one) => one.personId === personId && !untold.includes(sittingOf(one)),
  );
}
