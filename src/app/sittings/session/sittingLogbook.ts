import type { Motion } from "../../../dialing/motion";
import { inTime } from "../../../drill/marking/inTime";
import { isAdmitted } from "../../../drill/marking/isAdmitted";
import { isDoubtAdmitted } from "../../../drill/marking/lostSight";
import type {
  DialingTry as DialingResult,
  TryResult,
  ZeroingTry as ZeroingResult,
} from "../../../drill/marking/tryResult";
import type { Station, ZeroingStation } from "../../../drill/sheet/sheet";
import { stationRules } from "../../../drill/sheet/stationRules";
import { mayKeepMotion } from "../../../realdial/sources/sourceDescription";
import { attemptNote } from "../../../records/attempt/attemptNote";
import { stationOutcome } from "../../../records/attempt/stationOutcome";
import { conditionsOf } from "../../../records/attemptConditions";
import { type AttemptOutcome, unfinishedOutcome } from "../../../records/attemptOutcome";
import { exerciseOf } from "../../../records/exercise";
import { type JobEnd, jobNote } from "../../../records/job/jobNote";
import { encodeTrace } from "../../../records/motion/traceCodec";
import { runningNote, sittingNote } from "../../../records/sitting/sittingNote";
import { tryId } from "../../../records/tryOfSitting";
import { zeroingNote } from "../../../records/zeroing/zeroingNote";
import { outcomeOfTry } from "../../../records/zeroing/zeroingOutcome";
import type { LogbookWrite } from "../../../store/logbookWrite";
import { replay } from "../../../trace/replay";
import { jobWrite } from "../../keeping/jobWrite";
import type { JobResult } from "../../verdicts/jobTryWords";
import type { KeptRecord } from "../../verdicts/keptRecord";
import type { DialingTry } from "../tries/dialingTry";
import { keptEnd, withinTime } from "../tries/jobTryRecord";
import { isDialTry, type TryInHand } from "../tries/tryInHand";
import type { TrySetup } from "../tries/trySetup";
import type { SittingProgress } from "./sittingProgress";

/** To whom and to which sitting a try belongs. */
export interface TryOwner {
  readonly sittingId: string;
  readonly personId: string;
  readonly index: number;
  /** When it ended, milliseconds since 1970. */
  readonly now_ms: number;
}

const stamp = ({ sittingId, index, now_ms }: TryOwner) => {
  const now = Math.round(now_ms);
  return { id: tryId(sittingId, index), createdAt: now, updatedAt: now };
};

type TryMade = Pick<DialingResult, "time_ms" | "sources" | "doubts">;
type DialedResult = TryMade & Pick<DialingResult, "combination">;

/** What turned the dial of a try, and why it may not count. */
const circumstances = (result: TryMade, station: Station) => ({
  ...(inTime(result, station) ? {} : { isLate: true }),
  ...(isAdmitted(result, station) ? {} : { isNotAdmitted: true }),
  ...(isDoubtAdmitted(result, station) ? {} : { isDoubtRefused: true }),
});

const turnedBy = ({ sources, doubts }: TryMade) => ({
  ...(sources && { sources: [...sources] }),
  ...(doubts && { doubts: [...doubts] }),
});

/** What of a try at dialing is taken down. */
type DialedTry = Pick<DialingTry, "setup" | "attempt" | "motion" | "isEnded">;

/** What a try at dialing that has ended came to. */
export const dialedOutcome = ({ setup, attempt }: Pick<DialedTry, "setup" | "attempt">, result: TryMade) =>
  stationOutcome(attempt, setup.station, result);

/** An attempt as it is on record. @param came - what it came to; of one that is unfinished its station says nothing yet */
function dialedRecord(
  { station, conditions, profile }: TrySetup,
  came: AttemptOutcome,
  result: DialedResult,
  owner: TryOwner,
) {
  const { time_ms, combination } = result;
  const frame = {
    ...stamp(owner),
    startedAt: owner.now_ms - time_ms,
    duration_ms: time_ms,
    exercise: exerciseOf(station.kind === "dialing" ? station.upTo : undefined),
    help: station.help,
    conditions: conditionsOf(conditions),
    sittingId: owner.sittingId,
    ...turnedBy(result),
  };
  const counted = came.isUnfinished ? {} : circumstances(result, station);
  return { ...attemptNote(frame, { profile, combination }, { ...came, ...counted }), personId: owner.personId };
}

function attemptWrite(one: DialedTry, result: DialedResult, owner: TryOwner): LogbookWrite {
  const came = one.isEnded ? dialedOutcome(one, result) : unfinishedOutcome(one.attempt);
  const record = dialedRecord(one.setup, came, result, owner);
  return { kind: "attempts", ...(mayKeepMotion(result) && { trace: encodeTrace(one.motion) }), record };
}

/** A try at setting zero. @param hidden - the condition of its lock, where it is still known */
function zeroingWrite(
  { station, profile }: TrySetup,
  result: ZeroingResult,
  hidden: { readonly condition?: object },
  owner: TryOwner,
): LogbookWrite {
  const { readings = [], time_ms } = result;
  const note = zeroingNote({
    ...stamp(owner),
    startedAt: owner.now_ms - time_ms,
    profileId: profile.id,
    outcome: outcomeOfTry(result, stationRules(station as ZeroingStation, profile)),
    ...circumstances(result, station),
    ...turnedBy(result),
    readings: readings.map(({ refusal, ...reading }) => ({ ...reading, ...(refusal !== null && { refusal }) })),
    details: { sittingId: owner.sittingId, ...hidden },
  });
  return { kind: "zeroings", record: { ...note, personId: owner.personId } };
}

/** A try at a job: a record of how it ended. */
function jobTryWrite(setup: TrySetup, result: JobResult, end: JobEnd, owner: TryOwner): LogbookWrite {
  const { station, profile } = setup;
  const duration_ms = Math.round(result.time_ms);
  const startedAt = owner.now_ms - duration_ms;
  const frame = { ...stamp(owner), profile, help: station.help, startedAt, duration_ms, sittingId: owner.sittingId };
  const turned = "sources" in result ? turnedBy(result) : {};
  return jobWrite(owner.personId, jobNote({ ...frame, ...turned }, withinTime(end, result, station)));
}

/** A try of a sitting for the logbook; one at a dial that has not ended counts as unfinished. */
export function tryWrite(one: TryInHand, owner: TryOwner): LogbookWrite {
  if (!isDialTry(one)) return jobTryWrite(one.setup, one.result(), one.jobEnd, owner);
  if (one.kind === "dialing") return attemptWrite(one, one.result(), owner);
  const { condition } = one.session.lock;
  return zeroingWrite(one.setup, one.result(), { condition }, owner);
}

/** What the page kept of a try at dialing, null where that is lost. */
export interface KeptOfTry {
  readonly motion: Motion | null;
  /** What it came to, where its motion may not be kept. */
  readonly outcome?: AttemptOutcome | null;
}

function keptDialed(setup: TrySetup, result: DialingResult, { motion, outcome = null }: KeptOfTry, owner: TryOwner) {
  const { combination } = setup.plan;
  if (combination === null) return null;
  if (!mayKeepMotion(result)) {
    return outcome && { kind: "attempts" as const, record: dialedRecord(setup, outcome, result, owner) };
  }
  if (motion === null) return null;
  const attempt = replay({ profile: setup.profile, combination, ...motion });
  return attemptWrite({ setup, attempt, motion, isEnded: true }, result, owner);
}

/**
 * A try of a sitting for the logbook, from what the page kept of it: the page was killed before the logbook had it.
 *
 * @param result - what it came to
 * @param kept - of the hand, or of what it came to
 * @returns null for a try that was lost, or cannot be told any more
 */
export function keptTryWrite(
  setup: TrySetup,
  result: TryResult,
  kept: KeptOfTry,
  owner: TryOwner,
): LogbookWrite | null {
  if (result.isBrokenOff) return null;
  if (result.kind === "zeroing") return zeroingWrite(setup, result, {}, owner);
  if (result.kind !== "dialing") return jobTryWrite(setup, result, keptEnd(result), owner);
  return keptDialed(setup, result, kept, owner);
}

/** A sitting that goes on, for the logbook: all that is needed to go on with it. */
export const runningWrite = (progress: SittingProgress, personId: string, now_ms: number): LogbookWrite => ({
  kind: "sittings",
  record: { ...runningNote({ id: progress.id, now_ms }, progress), personId },
});

/** A finished sitting for the logbook. */
export const sittingWrite = ({ id, record, sha256 }: KeptRecord, personId: string, now_ms: number): LogbookWrite => ({
  kind: "sittings",
  record: { ...sittingNote({ id, now_ms }, record, sha256), personId },
});
