import type { Attempt } from "../dialing/attempt";
import { replay } from "../trace/replay";
import { countText } from "../wording/amountWords";
import { attemptOutcome } from "./attemptOutcome";
import type { AttemptRecord } from "./attemptRecord";
import { recordedAttempt } from "./csv/attemptsReplay";
import type { ReadingProgress } from "./file/logbookFile";
import type { LogbookContents } from "./logbookContents";

/** A logbook whose attempts were replayed, and what was left out of it, a sentence each. */
export interface ReplayedLogbook {
  readonly contents: LogbookContents;
  readonly leftOut: readonly string[];
}

/** Sums of moves carry rounding, graduations. */
const SAME = 1e-6;
/** Recordings keep whole milliseconds; the last move may be a frame before the end. */
const SAME_TIME = 50;
/** Attempts from one word about them to the next. */
const TOLD_EVERY = 50;

/** How many numbers an exercise asks for; Infinity for a whole opening. */
function numbersAsked(exercise: string): number {
  const [, count] = /^first (\d)$/.exec(exercise) ?? [];
  return count === undefined ? Number.POSITIVE_INFINITY : Number(count);
}

/** Whether a replay comes to what counts as opened in an exercise. */
function isOpened(attempt: Attempt, exercise: string): boolean {
  const asked = numbersAsked(exercise);
  if (asked === Number.POSITIVE_INFINITY) return attempt.opened;
  return attemptOutcome(attempt).faults.every(({ code, number }) => number > asked || code === "not-drawn");
}

function hasSameStops(record: AttemptRecord, attempt: Attempt): boolean {
  const { stops } = attemptOutcome(attempt);
  return (
    stops.length === record.stops.length &&
    stops.every(({ error }, k) => Math.abs(error - (record.stops[k]?.error ?? 1e9)) <= SAME)
  );
}

/** Why an attempt is not counted; undefined where its recording bears it out. */
function misfit(record: AttemptRecord, trace: Uint8Array | undefined): string | undefined {
  // A miss gains nothing by a recording that is gone.
  if (trace === undefined) return record.opened ? "no recording" : undefined;
  const recorded = recordedAttempt(record, trace);
  const attempt = replay(recorded);
  const lasts = recorded.times_ms?.at(-1) ?? record.duration_ms;
  if (record.opened && (record.isUnfinished === true || !isOpened(attempt, record.exercise)))
    return "recorded as opened, and the recording does not open the lock";
  if (Math.abs(lasts - record.duration_ms) > SAME_TIME) return "another time than its recording";
  return record.opened && !hasSameStops(record, attempt) ? "other stop errors than its recording" : undefined;
}

function misfitOf(record: AttemptRecord, trace: Uint8Array | undefined): string | undefined {
  try {
    return misfit(record, trace);
  } catch {
    return "a lock that is not known here, or a recording that its lock cannot follow";
  }
}

/** "2 attempts of Tavro are left out: no recording." */
function sentences(found: ReadonlyMap<string, string>, { records }: LogbookContents): string[] {
  const names = new Map(records.people.map(({ id, name }) => [id, name]));
  const groups = new Map<string, number>();
  for (const { id, personId } of records.attempts) {
    const why = found.get(id);
    if (why === undefined) continue;
    const key = JSON.stringify([names.get(personId) ?? personId, why]);
    groups.set(key, (groups.get(key) ?? 0) + 1);
  }
  return [...groups].map(([key, count]) => {
    const [name, why] = JSON.parse(key) as [string, string];
    return `${countText(count, "attempt")} of ${name} left out: ${why}.`;
  });
}

/**
 * Replays every attempt of a logbook on its lock, and leaves out those that their recordings do not bear out.
 *
 * An attempt that was not opened is taken at its word where another version's reading differs: that is to nobody's gain.
 *
 * @param tell - hears how far it is
 */
export function replayedLogbook(
  contents: LogbookContents,
  tell: (progress: ReadingProgress) => void = () => {},
): ReplayedLogbook {
  const { records, traces } = contents;
  const found = new Map<string, string>();
  records.attempts.forEach((record, done) => {
    if (done % TOLD_EVERY === 0) tell({ stage: "replaying", done, total: records.attempts.length });
    const why = misfitOf(record, traces.get(record.id));
    if (why !== undefined) found.set(record.id, why);
  });
  const attempts = records.attempts.filter(({ id }) => !found.has(id));
  return { contents: { ...contents, records: { ...records, attempts } }, leftOut: sentences(found, contents) };
}
