import type { Attempt } from "../../../dialing/attempt";
import type { Motion } from "../../../dialing/motion";
import { inTime } from "../../../drill/marking/inTime";
import { faultsCounted, type TryResult, type ZeroingTry as ZeroingResult } from "../../../drill/marking/tryResult";
import type { Station, ZeroingStation } from "../../../drill/sheet/sheet";
import { stationRules } from "../../../drill/sheet/stationRules";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import { conditionsOf } from "../../../records/attemptConditions";
import { type AttemptOutcome, attemptOutcome, unfinishedOutcome } from "../../../records/attemptOutcome";
import { conditionCode } from "../../../records/conditionCode";
import { exerciseOf } from "../../../records/exercise";
import { type JobEnd, jobNote } from "../../../records/job/jobNote";
import { encodeTrace } from "../../../records/motion/traceCodec";
import type { SittingRecord } from "../../../records/sitting/sittingRecord";
import { tryId } from "../../../records/tryOfSitting";
import { zeroingNote } from "../../../records/zeroing/zeroingNote";
import { outcomeOfTry } from "../../../records/zeroing/zeroingOutcome";
import type { LogbookWrite } from "../../../store/logbookWrite";
import { replay } from "../../../trace/replay";
import { jobWrite } from "../../keeping/jobWrite";
import type { DialingTry } from "../tries/dialingTry";
import { type JobResult, keptEnd, withinTime } from "../tries/jobTryRecord";
import { isDialTry, type TryInHand } from "../tries/tryInHand";
import type { TrySetup } from "../tries/trySetup";
import type { SittingProgress } from "./sittingProgress";
import type { KeptRecord } from "./sittingShelf";

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

const ownProfile = ({ profile }: Pick<TrySetup, "profile">) =>
  SHIPPED_PROFILES.includes(profile) ? {} : { ownProfile: JSON.parse(JSON.stringify(profile)) };

/** What a try that has ended came to, by what its station asks: some of the numbers are dialed without a bolt to draw. */
function stationOutcome(attempt: Attempt, station: Station): AttemptOutcome {
  const outcome = attemptOutcome(attempt);
  if (station.kind !== "dialing" || station.upTo === undefined) return outcome;
  const faults = faultsCounted(outcome, station);
  return { ...outcome, faults: [...faults], opened: faults.length === 0 };
}

type TryTime = Pick<TryResult, "time_ms">;

const lateness = (result: TryTime, station: Station) => (inTime(result, station) ? {} : { isLate: true });

/** What of a try at dialing is taken down. */
type DialedTry = Pick<DialingTry, "setup" | "attempt" | "motion" | "isEnded">;

function attemptWrite({ setup, attempt, motion, isEnded }: DialedTry, result: TryTime, owner: TryOwner): LogbookWrite {
  const { station } = setup;
  const duration_ms = motion.times_ms?.at(-1) ?? 0;
  const upTo = station.kind === "dialing" ? station.upTo : undefined;
  return {
    kind: "attempts",
    trace: encodeTrace(motion),
    record: {
      ...stamp(owner),
      personId: owner.personId,
      startedAt: Math.round(owner.now_ms - duration_ms),
      duration_ms,
      profileId: attempt.profile.id,
      ...ownProfile(attempt),
      exercise: exerciseOf(upTo),
      combination: [...attempt.combination],
      help: station.help,
      conditions: conditionsOf(setup.conditions).map(conditionCode),
      sittingId: owner.sittingId,
      tags: [],
      ...(isEnded ? { ...stationOutcome(attempt, station), ...lateness(result, station) } : unfinishedOutcome(attempt)),
    },
  };
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
    ...lateness(result, station),
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
  return jobWrite(owner.personId, jobNote(frame, withinTime(end, result, station)));
}

/** A try of a sitting for the logbook; one at a dial that has not ended counts as unfinished. */
export function tryWrite(one: TryInHand, owner: TryOwner): LogbookWrite {
  if (!isDialTry(one)) return jobTryWrite(one.setup, one.result(), one.jobEnd, owner);
  if (one.kind === "dialing") return attemptWrite(one, one.result(), owner);
  const { condition } = one.session.lock;
  return zeroingWrite(one.setup, one.result(), { condition }, owner);
}

/**
 * A try of a sitting for the logbook, from what the page kept of it: the page was killed before the logbook had it.
 *
 * @param result - what it came to
 * @param motion - of the hand, or null where it is lost
 * @returns null for a try that was lost, or cannot be told any more
 */
export function keptTryWrite(
  setup: TrySetup,
  result: TryResult,
  motion: Motion | null,
  owner: TryOwner,
): LogbookWrite | null {
  if (result.isBrokenOff) return null;
  if (result.kind === "zeroing") return zeroingWrite(setup, result, {}, owner);
  if (result.kind !== "dialing") return jobTryWrite(setup, result, keptEnd(result), owner);
  const { combination } = setup.plan;
  if (motion === null || combination === null) return null;
  const attempt = replay({ profile: setup.profile, combination, ...motion });
  return attemptWrite({ setup, attempt, motion, isEnded: true }, result, owner);
}

/** What the logbook has of every sitting, whether it goes on or not. */
function sittingFrame({ sheet, startedAt }: Pick<SittingRecord, "sheet" | "startedAt">, now_ms: number) {
  const parsed = Date.parse(startedAt);
  const start = Number.isFinite(parsed) ? parsed : Math.round(now_ms);
  return { createdAt: start, updatedAt: Math.round(now_ms), startedAt: start, title: sheet.title };
}

/** A sitting that goes on, for the logbook: all that is needed to go on with it. */
export function runningWrite(progress: SittingProgress, personId: string, now_ms: number): LogbookWrite {
  const body = JSON.parse(JSON.stringify({ progress }));
  const { id } = progress;
  return { kind: "sittings", record: { id, personId, ...sittingFrame(progress, now_ms), state: "running", body } };
}

const VERDICTS = { pass: "passed", fail: "failed", "not shown": "not shown yet" } as const;

/** A finished sitting for the logbook. */
export function sittingWrite({ id, record, sha256 }: KeptRecord, personId: string, now_ms: number): LogbookWrite {
  return {
    kind: "sittings",
    record: {
      id,
      personId,
      ...sittingFrame(record, now_ms),
      state: record.ended === "broken-off" ? "broken-off" : "finished",
      verdict: VERDICTS[record.marking.verdict],
      body: JSON.parse(JSON.stringify({ record, sha256 })),
    },
  };
}
