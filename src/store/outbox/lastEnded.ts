import { triedRight } from "../../records/triedRight";
import type { Logbook } from "../logbook";

/** What an attempt or a job came to, and when it ended, milliseconds since 1970. */
export interface Ended {
  readonly isRight: boolean;
  readonly endedAt: number;
}

const endOf = ({ startedAt, duration_ms }: { readonly startedAt: number; readonly duration_ms: number }) =>
  Math.round(startedAt + duration_ms);

/** Rows of a person, oldest first: the index goes by person and beginning, and a list comes after every text. */
const ofPerson = (personId: string) => [[personId], [personId, []]] as const;

/**
 * What somebody's last attempt or job came to, as far as it is stored; null where there is none. One that is under way is no
 * result yet.
 *
 * @throws {LogbookError} when the storage fails
 */
export function lastEnded(logbook: Logbook, personId: string): Promise<Ended | null> {
  const [low, high] = ofPerson(personId);
  const index = "[personId+startedAt+id]";
  return logbook.read(async ({ attempts, jobs }) => {
    const attempt = await attempts
      .where(index)
      .between(low, high)
      .reverse()
      .filter(({ isUnfinished }) => isUnfinished !== true)
      .first();
    const job = await jobs.where(index).between(low, high).last();
    const ended: readonly Ended[] = [
      ...(attempt === undefined ? [] : [{ isRight: triedRight(attempt), endedAt: endOf(attempt) }]),
      ...(job === undefined ? [] : [{ isRight: job.isRight, endedAt: endOf(job) }]),
    ];
    return ended.toSorted((one, other) => other.endedAt - one.endedAt)[0] ?? null;
  }, null);
}
