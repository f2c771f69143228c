import type { LogbookDatabase } from "./logbookDatabase";
import type { LogbookWrite } from "./logbookWrite";

/** Whether a write is of something that still goes on: a running sitting or handover, or an attempt without its end. */
export function isUnderWay(write: LogbookWrite): boolean {
  switch (write.kind) {
    case "sittings":
      return write.record.state === "running";
    case "attempts":
      return write.record.isUnfinished === true;
    case "handoverRuns":
      return write.record.isRunning;
    default:
      return false;
  }
}

/** Id of the sitting that a write belongs to, or undefined. */
export function sittingOf(write: LogbookWrite): string | undefined {
  switch (write.kind) {
    case "sittings":
      return write.record.id;
    case "attempts":
    case "jobs":
      return write.record.sittingId;
    case "zeroings": {
      const details: unknown = write.record.details;
      const id =
        typeof details === "object" && details !== null && "sittingId" in details ? details.sittingId : undefined;
      return typeof id === "string" ? id : undefined;
    }
    default:
      return undefined;
  }
}

/** Whether two records of sittings end differently. */
const endsOtherwise = (before: LogbookWrite, write: LogbookWrite): boolean =>
  before.kind === "sittings" &&
  write.kind === "sittings" &&
  (before.record.state !== write.record.state || before.record.verdict !== write.record.verdict);

/** Whether a zeroing with its result would be one without. */
const losesResult = (before: LogbookWrite, write: LogbookWrite): boolean =>
  before.kind === "zeroings" &&
  write.kind === "zeroings" &&
  before.record.outcome !== "broken-off" &&
  write.record.outcome === "broken-off";

/** Whether a write would put something that goes on, or ends otherwise, in the place of something that has ended. */
export const wouldUndoEnd = (before: LogbookWrite, write: LogbookWrite): boolean =>
  losesResult(before, write) || (!isUnderWay(before) && (isUnderWay(write) || endsOtherwise(before, write)));

/** Sittings that writes take as going on, and that have ended in the tables. To be called within a transaction. */
export async function endedAmong(
  database: LogbookDatabase,
  writes: readonly LogbookWrite[],
): Promise<ReadonlySet<string>> {
  const ids = new Set(writes.flatMap((write) => (isUnderWay(write) ? (sittingOf(write) ?? []) : [])));
  const stored = await database.sittings.bulkGet([...ids]);
  return new Set(stored.flatMap((one) => (one === undefined || one.state === "running" ? [] : one.id)));
}

/**
 * The writes that are left when none may revive a sitting that has ended: neither a running record of it nor what comes
 * with one, nor a try of it that goes on. A try that ended before the sitting did may still come by itself.
 *
 * @param ended - as `endedAmong` gives them for the same writes
 */
export function withoutRevived(writes: readonly LogbookWrite[], ended: ReadonlySet<string>): readonly LogbookWrite[] {
  if (ended.size === 0) return writes;
  const revived = new Set(writes.flatMap((one) => (one.kind === "sittings" && isUnderWay(one) ? one.record.id : [])));
  return writes.filter((write) => {
    const id = sittingOf(write);
    return id === undefined || !ended.has(id) || !(isUnderWay(write) || revived.has(id));
  });
}
