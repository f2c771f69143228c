import { drawCombination } from "../../drill/combinations/drawCombination";
import type { Profile } from "../../lock/profile";
import { shippedProfile } from "../../lock/shippedProfiles";
import { attemptOutcome } from "../../records/attemptOutcome";
import type { AttemptRecord, HelpLevel } from "../../records/attemptRecord";
import { type LogbookContents, NO_CONTENTS } from "../../records/logbookContents";
import { encodeTrace } from "../../records/motion/traceCodec";
import type { PersonRecord, ZeroingRecord } from "../../records/records";
import { bySkill } from "../../records/skill";
import { type Chance, seededChance } from "../../statistics/chance";
import { drawNormal } from "../../statistics/drawNormal";
import { replay } from "../../trace/replay";
import { declarationOf } from "../mastery";
import { practicesOf } from "../practice";
import { demoFittingWeek } from "./demoFittingWeek";
import { demoJobs } from "./demoJobs";
import { DEMO_PEOPLE, DEMO_ZEROING, type DemoPerson } from "./demoPeople";
import { handMotion } from "./handMotion";

/** Every demo on a screen is the same one, so that loading it twice brings nothing twice. */
export const DEMO_SEED = 7;

const DAY_MS = 86_400_000;
/** Days of the demo week on which everyone dials; Wednesday, day 3, is for zeroing. */
const DIALING_DAYS = [1, 2, 4, 5];
const PROFILES = ["three-wheel", "dial-encoder"];
/** Attempts at each lock on each of these days: twenty in a week, as sheet 3 asks. */
const PER_DAY = 5;
/** From the beginning of one attempt to the next. */
const PAUSE_MS = 90_000;
const LESSON_MS = 8 * 3_600_000;

/** Ids in the form of uuids of version 8, drawn by seed: the same demo loaded twice is there once. */
function drawId(chance: Chance): string {
  const digits = Array.from({ length: 32 }, () => Math.floor(chance() * 16).toString(16));
  digits[12] = "8";
  digits[16] = (8 + Math.floor(chance() * 4)).toString(16);
  return [0, 8, 12, 16, 20].map((from, i, all) => digits.slice(from, all[i + 1]).join("")).join("-");
}

type Hand = NonNullable<DemoPerson["hand"]>;

interface Try {
  readonly personId: string;
  readonly profile: Profile;
  readonly hand: Hand;
  readonly startedAt: number;
  readonly help: HelpLevel;
}

/** One attempt through the real engine: drawn stops, a hand that makes them, and what the lock made of it. */
function demoAttempt({ personId, profile, hand, startedAt, help }: Try, chance: Chance) {
  const combination = drawCombination(profile, chance);
  const plan = {
    stopErrors: combination.map(() => drawNormal(chance, hand.bias, hand.spread)),
    extraTurns: chance() < hand.miscounts ? [0, 1] : [],
    speed: hand.speed,
  };
  const start = { dial: Math.floor(chance() * profile.graduations) };
  const motion = { start, ...handMotion(profile, combination, start.dial, plan, chance) };
  const attempt = replay({ profile, combination, ...motion });
  const duration_ms = motion.times_ms.at(-1) ?? 0;
  const record: AttemptRecord = {
    id: drawId(chance),
    createdAt: startedAt + duration_ms,
    updatedAt: startedAt + duration_ms,
    personId,
    startedAt,
    duration_ms,
    profileId: profile.id,
    exercise: "open",
    combination: [...combination],
    help,
    conditions: [],
    tags: ["demo"],
    ...attemptOutcome(attempt),
  };
  return { record, trace: encodeTrace(motion) };
}

const HELP_OF_DAY: Readonly<Record<number, HelpLevel>> = { 1: "full", 2: "counts", 4: "counts", 5: "silent" };

function demoAttempts({ hand }: DemoPerson, personId: string, monday: number, chance: Chance) {
  if (hand === null) return [];
  return DIALING_DAYS.flatMap((day) =>
    PROFILES.flatMap((profileId, lesson) =>
      Array.from({ length: PER_DAY }, (_, i) => {
        const startedAt = monday + (day - 1) * DAY_MS + LESSON_MS + (lesson * PER_DAY + i) * PAUSE_MS;
        const help = HELP_OF_DAY[day] ?? "silent";
        return demoAttempt({ personId, profile: shippedProfile(profileId), hand, startedAt, help }, chance);
      }),
    ),
  );
}

function demoZeroing(people: readonly PersonRecord[], monday: number, chance: Chance): ZeroingRecord[] {
  const person = people.find(({ name }) => name === DEMO_ZEROING.name);
  const at = monday + 2 * DAY_MS + LESSON_MS;
  if (person === undefined) return [];
  return [
    {
      id: drawId(chance),
      createdAt: at,
      updatedAt: at,
      personId: person.id,
      startedAt: at,
      profileId: DEMO_ZEROING.profileId,
      outcome: "zero-set",
      readings: DEMO_ZEROING.readings.map((one) => ({ ...one })),
    },
  ];
}

/**
 * A week of an invented school, drawn by seed and dialed on the real engine; every person is marked as demo.
 *
 * @param seed - any integer; the same seed gives the same ids, so it is never there twice
 * @param now - time of loading, milliseconds since 1970; the week ends before it
 */
export function demoLogbook(seed: number, now: number): LogbookContents {
  const chance = seededChance(seed);
  const monday = (Math.floor(now / DAY_MS) - 7) * DAY_MS;
  const people = DEMO_PEOPLE.map(
    ({ name, part }): PersonRecord => ({
      id: drawId(chance),
      createdAt: monday,
      updatedAt: monday,
      name,
      part,
      isDemo: true,
    }),
  );
  const tries = DEMO_PEOPLE.flatMap((person, i) => demoAttempts(person, people[i]?.id ?? "", monday, chance));
  const attempts = tries.map(({ record }) => record);
  const zeroings = demoZeroing(people, monday, chance);
  const week = { monday, chance, drawId: () => drawId(chance) };
  // In this order: what is drawn first keeps its ids, so that a demo of an earlier version is there once.
  const jobs = [demoJobs, demoFittingWeek].flatMap((jobsOf) =>
    people.flatMap(({ id, name }) => jobsOf(name, id, week)),
  );
  const practices = practicesOf(attempts, jobs);
  const declarations = people.flatMap(({ id }) =>
    bySkill(practices.filter(({ personId }) => personId === id)).flatMap(
      ({ skill, attempts: own }) => declarationOf(id, skill, own) ?? [],
    ),
  );
  return {
    records: { ...NO_CONTENTS.records, people, attempts, zeroings, jobs, declarations },
    traces: new Map(tries.map(({ record, trace }) => [record.id, trace])),
  };
}
