import type { Logbook } from "./logbook";

/**
 * Those of some tries that the tables have as they ended: not an attempt as unfinished, nor a zeroing as broken off.
 *
 * @throws {LogbookError} when the storage fails
 */
export async function endedTries(logbook: Logbook, ids: readonly string[]): Promise<ReadonlySet<string>> {
  const asked = [...ids];
  const attempts = await logbook.read((database) => database.attempts.bulkGet(asked), []);
  const zeroings = await logbook.read((database) => database.zeroings.bulkGet(asked), []);
  const jobs = await logbook.read((database) => database.jobs.bulkGet(asked), []);
  return new Set([
    ...jobs.flatMap((one) => one?.id ?? []),
    ...attempts.flatMap((one) => (one === undefined || one.isUnfinished === true ? [] : one.id)),
    ...zeroings.flatMap((one) => (one === undefined || one.outcome === "broken-off" ? [] : one.id)),
  ]);
}
