import { shippedProfile } from "../../lock/shippedProfiles";
import type { HelpLevel } from "../../records/attemptRecord";
import { type LogbookContents, NO_CONTENTS } from "../../records/logbookContents";
import type { PersonRecord, ZeroingRecord } from "../../records/records";
import { bySkill } from "../../records/skill";
import { type Chance, seededChance } from "../../statistics/chance";
import { declarationOf } from "../mastery";
import { practicesOf } from "../practice";
import { demoAttempt, drawId } from "./demoAttempt";
import { demoFittingWeek } from "./demoFittingWeek";
import { demoJobs } from "./demoJobs";
import { DEMO_PEOPLE, DEMO_ZEROING, type DemoPerson } from "./demoPeople";

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
