import type { Attempt } from "../../dialing/attempt";
import type { Condition } from "../../drill/sheet/sheet";
import type { SittingRecord } from "../../drill/sittingRecord";
import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import { attemptOutcome } from "../../logbook/attemptOutcome";
import type { LogbookWrite } from "../../logbook/logbookWrite";
import { encodeTrace } from "../../logbook/traceCodec";
import type { DialingTry } from "./dialingTry";
import type { TryInHand } from "./sittingSession";
import type { KeptRecord } from "./sittingShelf";
import type { ZeroingTry } from "./zeroingTry";

/** To whom and to which sitting a try belongs. */
export interface TryOwner {
  readonly sittingId: string;
  readonly personId: string;
  readonly index: number;
  /** When it ended, milliseconds since 1970. */
  readonly now_ms: number;
}

const conditionText = (condition: Condition): string => {
  const name = condition.kind.replaceAll("-", " ");
  return "size" in condition ? `${name} ${condition.size}` : name;
};

const stamp = ({ sittingId, index, now_ms }: TryOwner) => {
  const now = Math.round(now_ms);
  return { id: `${sittingId}:${index + 1}`, createdAt: now, updatedAt: now };
};

const ownProfile = ({ profile }: Attempt) =>
  SHIPPED_PROFILES.includes(profile) ? {} : { ownProfile: JSON.parse(JSON.stringify(profile)) };

function attemptWrite(one: DialingTry, owner: TryOwner): LogbookWrite {
  const { setup, attempt, motion } = one;
  const { station, plan } = setup;
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
      exercise: upTo === undefined ? "open" : `first ${upTo}`,
      combination: [...attempt.combination],
      help: station.help,
      conditions: (station.conditions ?? []).filter(({ from = 1 }) => from <= plan.repetition).map(conditionText),
      sittingId: owner.sittingId,
      tags: [],
      ...attemptOutcome(attempt),
    },
  };
}

const zeroOutcome = ({ session }: ZeroingTry) => {
  if (session.state === "zeroSet") return "zero-set";
  return session.state === "notSet" ? "not-set" : "broken-off";
};

function zeroingWrite(one: ZeroingTry, owner: TryOwner): LogbookWrite {
  return {
    kind: "zeroings",
    record: {
      ...stamp(owner),
      personId: owner.personId,
      startedAt: Math.round(owner.now_ms - one.result().time_ms),
      profileId: one.setup.profile.id,
      outcome: zeroOutcome(one),
      readings: one.readings
        .slice(-500)
        .map(({ refusal, ...reading }) => ({ ...reading, ...(refusal !== null && { refusal }) })),
      details: { sittingId: owner.sittingId, condition: { ...one.session.lock.condition } },
    },
  };
}

/** A try of a sitting for the logbook. */
export function tryWrite(one: TryInHand, owner: TryOwner): LogbookWrite {
  return one.kind === "dialing" ? attemptWrite(one, owner) : zeroingWrite(one, owner);
}

const VERDICTS = { pass: "passed", fail: "failed", "not shown": "not shown yet" } as const;

const startOf = ({ startedAt }: SittingRecord, now_ms: number) => {
  const start = Date.parse(startedAt);
  return Number.isFinite(start) ? start : Math.round(now_ms);
};

/** A finished sitting for the logbook. */
export function sittingWrite({ id, record, sha256 }: KeptRecord, personId: string, now_ms: number): LogbookWrite {
  const startedAt = startOf(record, now_ms);
  return {
    kind: "sittings",
    record: {
      id,
      createdAt: startedAt,
      updatedAt: Math.round(now_ms),
      personId,
      startedAt,
      title: record.sheet.title,
      state: record.ended === "broken-off" ? "broken-off" : "finished",
      verdict: VERDICTS[record.marking.verdict],
      body: JSON.parse(JSON.stringify({ record, sha256 })),
    },
  };
}
