import type { FitFault } from "../../fitting/fitFaultCode";
import { shippedProfile } from "../../lock/shippedProfiles";
import { demoAttempt, drawId } from "../../progress/demo/demoAttempt";
import { fitted, judged } from "../../progress/demo/demoFits";
import { served } from "../../progress/demo/demoVisits";
import { type DemoEnd, demoJobsOf } from "../../progress/demo/demoWeek";
import { declarationOf } from "../../progress/mastery";
import { practicesOf } from "../../progress/practice";
import type { HelpLevel } from "../../records/attemptRecord";
import type { JobKind } from "../../records/jobRecord";
import { toBase64 } from "../../records/motion/base64";
import { bySkill } from "../../records/skill";
import type { Chance } from "../../statistics/chance";
import type { SentRecord } from "../wire/recordsWire";
import type { Apprentice } from "./demoClass";

const DAY_MS = 86_400_000;
const LESSON_MS = 8 * 3_600_000;
/** From the beginning of one attempt to the next. */
const PAUSE_MS = 90_000;
const PER_LESSON = 5;
const PROFILES = ["three-wheel", "dial-encoder"];

/** Days of the week on which everyone dials, with the help that is shown. */
const DIALING: readonly (readonly [day: number, help: HelpLevel])[] = [
  [0, "full"],
  [1, "counts"],
  [3, "counts"],
  [4, "silent"],
];

/** What goes wrong with a job, one of them drawn; by the codes of its kind. */
const MISSES = {
  change: ["number-set-off", "key-turned-unaligned", "door-shut-unproved"],
  trouble: ["not-named", "size"],
  handover: ["proved-three-times", "holdback-shown", "record", "second-person"],
} as const;
const LEFT_WRONG: readonly FitFault[] = ["ring-off-center", "end-play", "key-screw-unsecured", "rubs"];
const FORGOTTEN = ["record.read", "measured", "door.held"] as const;

/** Jobs of each kind in the week. */
const JOBS = 2;
/** Share of its jobs that the least of the class does right; the best does nearly all. */
const LEAST_RIGHT = 0.4;

const oneOf = <One>(list: readonly [One, ...One[]] | readonly One[], chance: Chance): One =>
  list[Math.floor(chance() * list.length)] as One;

/** How a job of a kind ends for somebody. */
function endOf(kind: JobKind, { skill }: Apprentice, chance: Chance): DemoEnd {
  const isRight = chance() < LEAST_RIGHT + (0.95 - LEAST_RIGHT) * skill;
  switch (kind) {
    case "fitting":
      return isRight ? fitted() : fitted(oneOf(LEFT_WRONG, chance));
    case "inspection":
      return isRight ? judged() : judged({ has: [oneOf(LEFT_WRONG, chance)], names: [] });
    case "service":
      return isRight ? served() : served(oneOf(FORGOTTEN, chance));
    default: {
      const missed = isRight ? [] : [oneOf(MISSES[kind], chance)];
      return () => ({ kind, missed });
    }
  }
}

const KINDS: readonly JobKind[] = ["fitting", "inspection", "change", "trouble", "service", "handover"];

/** What is known of whoever practices. */
export interface Practicing {
  readonly apprentice: Apprentice;
  /** Of the school. */
  readonly personId: string;
  /** Beginning of the week, milliseconds since 1970. */
  readonly monday: number;
}

/** A record with the moment at which its bench has it, milliseconds since 1970. */
export interface MadeRecord {
  readonly at: number;
  readonly sent: SentRecord;
}

/**
 * All that an invented apprentice practices in a week, as their bench records it: attempts dialed on the real engine by a
 * simulated hand, jobs done on the real parts, and the skills that were shown by the end.
 *
 * @returns in the order of their moments
 */
export function weekOfRecords({ apprentice, personId, monday }: Practicing, chance: Chance): MadeRecord[] {
  const { hand } = apprentice;
  const tries = DIALING.flatMap(([day, help]) =>
    PROFILES.flatMap((profileId, lesson) =>
      Array.from({ length: PER_LESSON }, (_, k) => {
        const startedAt = monday + day * DAY_MS + LESSON_MS + (lesson * PER_LESSON + k) * PAUSE_MS;
        return demoAttempt({ personId, profile: shippedProfile(profileId), hand, startedAt, help }, chance);
      }),
    ),
  );
  const week = { monday, chance, drawId: () => drawId(chance) };
  const jobs = KINDS.flatMap((kind) =>
    demoJobsOf(
      kind,
      personId,
      Array.from({ length: JOBS }, () => endOf(kind, apprentice, chance)),
      week,
    ),
  );
  const practices = practicesOf(
    tries.map(({ record }) => record),
    jobs,
  );
  const shown = bySkill(practices).flatMap(({ skill, attempts }) => declarationOf(personId, skill, attempts) ?? []);
  const made: MadeRecord[] = [
    ...tries.map(({ record, trace }) => ({
      at: record.createdAt,
      sent: { kind: "attempts" as const, record, motion: toBase64(trace) },
    })),
    ...jobs.map((record) => ({ at: record.createdAt, sent: { kind: "jobs" as const, record } })),
    ...shown.map((record) => ({ at: record.declaredAt, sent: { kind: "declarations" as const, record } })),
  ];
  return made.sort((one, other) => one.at - other.at);
}
