import type { Attempt } from "../../dialing/attempt";
import type { Motion } from "../../dialing/motion";
import { isOfCoarseStep } from "../../drill/marking/coarseStep";
import { mayKeepMotion } from "../../realdial/sources/sourceDescription";
import { turningMisfit } from "../../realdial/sources/sourcesMisfit";
import { replay } from "../../trace/replay";
import type { Problem } from "../../wording/problem";
import { attemptOutcome } from "../attemptOutcome";
import type { AttemptRecord } from "../attemptRecord";
import { recordedAttempt } from "../csv/attemptsReplay";
import { firstNumbersOf } from "../exercise";
import { fileProblem } from "../fileWords";
import type { LogbookContents } from "../logbookContents";
import { decodeTrace } from "../motion/traceCodec";
import type { ReadingProgress } from "./logbookFile";

/** A logbook whose attempts were replayed, and what was left out of it. */
export interface ReplayedLogbook {
  readonly contents: LogbookContents;
  readonly leftOut: readonly Problem[];
}

/** Sums of moves carry rounding, graduations. */
const SAME = 1e-6;
/** Recordings keep whole milliseconds; the last move may be a frame before the end. */
const SAME_TIME = 50;
/** Attempts from one word about them to the next. */
const TOLD_EVERY = 50;

/** Whether a replay comes to what counts as opened in an exercise. */
function isOpened(attempt: Attempt, { exercise, sources }: AttemptRecord): boolean {
  const asked = firstNumbersOf(exercise) ?? null;
  if (asked === null) return attempt.opened;
  const { faults } = attemptOutcome(attempt);
  return faults.every((fault) => fault.number > asked || fault.code === "not-drawn" || isOfCoarseStep(fault, sources));
}

function hasSameStops(record: AttemptRecord, attempt: Attempt): boolean {
  const { stops } = attemptOutcome(attempt);
  return (
    stops.length === record.stops.length &&
    stops.every(({ error }, k) => Math.abs(error - (record.stops[k]?.error ?? 1e9)) <= SAME)
  );
}

type Misfit =
  | "no-recording"
  | "motion-not-kept"
  | "opens-not"
  | "opens-after-all"
  | "other-time"
  | "other-stops"
  | "not-replayed"
  | "impossible-sources";

/** Whether what an attempt says of its opening is what its recording comes to. One that is not finished says nothing. */
function openingMisfit(record: AttemptRecord, attempt: Attempt): Misfit | undefined {
  const { opened, isUnfinished = false } = record;
  const opens = !isUnfinished && isOpened(attempt, record);
  if (opened === opens) return undefined;
  return opened ? "opens-not" : "opens-after-all";
}

const whyNoRecording = (record: AttemptRecord) => (mayKeepMotion(record) ? "no-recording" : "motion-not-kept");

/** Why an attempt is not counted; undefined where its recording bears it out. */
function misfit(record: AttemptRecord, motion: Motion | undefined): Misfit | undefined {
  if (turningMisfit(record) !== null) return "impossible-sources";
  // A miss gains nothing by a recording that is gone.
  if (motion === undefined) return record.opened ? whyNoRecording(record) : undefined;
  const recorded = recordedAttempt(record, motion);
  const attempt = replay(recorded);
  const opening = openingMisfit(record, attempt);
  if (opening !== undefined) return opening;
  const lasts = recorded.times_ms?.at(-1) ?? record.duration_ms;
  if (Math.abs(lasts - record.duration_ms) > SAME_TIME) return "other-time";
  return record.opened && !hasSameStops(record, attempt) ? "other-stops" : undefined;
}

/** How many attempts of each person are left out, and why. */
function leftOutOf(found: ReadonlyMap<string, Misfit>, { records }: LogbookContents): Problem[] {
  const names = new Map(records.people.map(({ id, name }) => [id, name]));
  const groups = new Map<string, { name: string; why: Misfit; count: number }>();
  for (const { id, personId } of records.attempts) {
    const why = found.get(id);
    if (why === undefined) continue;
    const name = names.get(personId) ?? personId;
    const group = groups.get(`${why} ${name}`) ?? { name, why, count: 0 };
    groups.set(`${why} ${name}`, { ...group, count: group.count + 1 });
  }
  return [...groups.values()].map(({ why, ...of }) =>
    fileProblem("attempts-left-out", [], { ...of, why: fileProblem(why, []) }),
  );
}

/**
 * Which attempts of a logbook their recordings do not bear out, attempt by attempt. Mutable.
 *
 * An attempt that was not opened is taken at its word about its stops, where another version's reading may differ: that is to
 * nobody's gain. But a miss whose recording opens the lock is none, whoever says so.
 */
export class Misfits {
  private readonly found = new Map<string, Misfit>();

  /** Replays an attempt on its lock; of one that comes again the last word counts. @param motion - gives its motion */
  replay(record: AttemptRecord, motion: () => Motion | undefined): void {
    const why = this.misfit(record, motion);
    if (why === undefined) this.found.delete(record.id);
    else this.found.set(record.id, why);
  }

  /** A logbook without the attempts that were found. */
  leaveOut(contents: LogbookContents): ReplayedLogbook {
    const { records } = contents;
    const attempts = records.attempts.filter(({ id }) => !this.found.has(id));
    return { contents: { ...contents, records: { ...records, attempts } }, leftOut: leftOutOf(this.found, contents) };
  }

  private misfit(record: AttemptRecord, motion: () => Motion | undefined): Misfit | undefined {
    try {
      return misfit(record, motion());
    } catch {
      return "not-replayed";
    }
  }
}

/**
 * Replays every attempt of a logbook, and leaves out those that their recordings do not bear out (`Misfits`).
 *
 * @param tell - hears how far it is
 */
export function replayedLogbook(
  contents: LogbookContents,
  tell: (progress: ReadingProgress) => void = () => {},
): ReplayedLogbook {
  const { records, traces } = contents;
  const misfits = new Misfits();
  records.attempts.forEach((record, done) => {
    if (done % TOLD_EVERY === 0) tell({ stage: "replaying", done, total: records.attempts.length });
    const trace = traces.get(record.id);
    misfits.replay(record, () => trace && decodeTrace(trace));
  });
  return misfits.leaveOut(contents);
}
