import { sql } from "kysely";
import { canonicalJson } from "../../../src/drill/canonicalJson";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { demoAttempt } from "../../../src/progress/demo/demoAttempt";
import { attemptTry, type SkillSummary, summaryAfter } from "../../../src/progress/skillSummary";
import type { AttemptRecord } from "../../../src/records/attemptRecord";
import type { OpenDatabase } from "../../../src/server/database/openDatabase";
import { sumUpAnew } from "../../../src/server/desk/summaries";
import { seededChance } from "../../../src/statistics/chance";
import { testSchool, testServer } from "../../server/support/testSchool";
import type { WeatherDatabase } from "../../server/weather/weatherEngines";
import { type Seat, seatBenches } from "./seats";
import { tell, timesText } from "./told";

const PROFILES = ["two-wheel", "three-wheel", "small-three-wheel", "four-wheel", "dial-encoder"];
const PEOPLE = 250;
/** Of each person at each lock: a million in all. */
const ATTEMPTS = 800;
/** Attempts at each lock that were really dialed; the others repeat them under ids and times of their own. */
const DIALED = 40;
/** Times that the table is asked for. */
const ASKED = 20;
const MINUTE_MS = 60_000;
const FIRST = Date.UTC(2025, 0, 6, 8);

const chance = seededChance(4);
const dialed = PROFILES.map((id) =>
  Array.from({ length: DIALED }, (_, k) => {
    const hand = { bias: 0, spread: 0.3 + (0.6 * k) / DIALED, miscounts: 0.05, speed: 30 };
    const one = { personId: "", profile: shippedProfile(id), hand, startedAt: FIRST, help: "silent" as const };
    return demoAttempt(one, chance).record;
  }),
);

interface Place {
  readonly person: number;
  readonly lock: number;
  readonly attempt: number;
}

const idOf = ({ person, lock, attempt }: Place) => `d-${person}-${lock}-${attempt}`;

/** An attempt of somebody. */
function attemptAt(place: Place, personId: string): AttemptRecord {
  const { person, lock, attempt } = place;
  const record = dialed[lock]?.[(7 * person + attempt) % DIALED];
  if (record === undefined) throw new RangeError("no such lock");
  const startedAt = FIRST + attempt * MINUTE_MS;
  return { ...record, id: idOf(place), personId, startedAt, createdAt: startedAt, updatedAt: startedAt };
}

/** Bodies of the dialed attempts, with marks where id, person and time go: the database itself makes a million of them. */
async function seedBodies({ query }: OpenDatabase): Promise<void> {
  await sql`create table bodies (lock int, k int, body text)`.execute(query);
  for (const [lock, records] of dialed.entries()) {
    for (const [k, record] of records.entries()) {
      const marks = { id: "@id@", personId: "@person@", startedAt: "@at@", createdAt: "@at@", updatedAt: "@at@" };
      const body = canonicalJson({ ...record, ...marks });
      await sql`insert into bodies values (${lock}, ${k}, ${body})`.execute(query);
    }
  }
}

async function seedRecords({ query }: OpenDatabase, schoolId: string, { personId, deviceId }: Seat, person: number) {
  const rows = PROFILES.length * ATTEMPTS;
  await sql`
    insert into records (school_id, id, kind, person_id, device_id, started_at, received_at, clock_ahead_ms, sha256, place, body)
    select ${schoolId}, made.id, 'attempts', ${personId}, ${deviceId}, made.at, made.at, 0, md5(made.id),
      ${person * rows}::bigint + made.number,
      replace(replace(replace(body, '@id@', made.id), '@person@', ${personId}), '"@at@"', made.at::text)
    from (
      select lock, attempt, lock * ${ATTEMPTS}::int + attempt + 1 as number,
        ${FIRST}::bigint + attempt * ${MINUTE_MS}::bigint as at,
        'd-' || ${person}::int || '-' || lock || '-' || attempt as id,
        (7 * ${person}::int + attempt) % ${DIALED}::int as k
      from generate_series(0, ${PROFILES.length - 1}::int) lock, generate_series(0, ${ATTEMPTS - 1}::int) attempt
    ) made join bodies using (lock, k)`.execute(query);
}

/** The summaries of somebody, as they have grown attempt by attempt. */
function summariesOf(person: number, personId: string): SkillSummary[] {
  return PROFILES.flatMap((_, lock) => {
    let summary: SkillSummary | null = null;
    for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
      summary = summaryAfter(summary, attemptTry(attemptAt({ person, lock, attempt }, personId)), null);
    }
    return summary ?? [];
  });
}

async function seedSummaries({ query }: OpenDatabase, schoolId: string, personId: string, person: number) {
  const rows = summariesOf(person, personId).map((summary) => ({
    ...{ school_id: schoolId, person_id: personId, hand: summary.hand ?? "", body: JSON.stringify(summary) },
    ...{ profile_id: summary.skill.profileId, exercise: summary.skill.exercise },
  }));
  await query.insertInto("skill_summaries").values(rows).execute();
}

/** The server's own way to sum somebody up must come to what was seeded. */
async function checkOne({ query }: OpenDatabase, schoolId: string, personId: string): Promise<void> {
  const bodies = async () => {
    const rows = await query.selectFrom("skill_summaries").select("body").where("person_id", "=", personId).execute();
    return rows.map(({ body }) => canonicalJson(JSON.parse(body))).sort();
  };
  const seeded = await bodies();
  await query.transaction().execute((held) => sumUpAnew(held, schoolId, personId));
  if (canonicalJson(await bodies()) !== canonicalJson(seeded)) throw new Error("the summaries are not of the records");
}

/** The desk of a class that has made a million attempts, asked for over and over. */
export async function deskLoad(name: string, weather: WeatherDatabase): Promise<void> {
  const database = await weather.open();
  const school = await testServer({ ...database, remove: database.close });
  const head = await testSchool(school, "Millbrook");
  const seats = await seatBenches(school, head.schoolId, PEOPLE, PEOPLE);
  const begin = performance.now();
  await seedBodies(database);
  for (const [person, seat] of seats.entries()) {
    await seedRecords(database, head.schoolId, seat, person);
    await seedSummaries(database, head.schoolId, seat.personId, person);
  }
  await sql`drop table bodies`.execute(database.query);
  await sql`analyze`.execute(database.query);
  await checkOne(database, head.schoolId, seats[3]?.personId ?? "");
  const { count } = await database.query
    .selectFrom("records")
    .select((of) => of.fn.countAll<number>().as("count"))
    .executeTakeFirstOrThrow();
  const seconds = (performance.now() - begin) / 1000;
  const times: number[] = [];
  const worked: number[] = [];
  let bytes = 0;
  for (let k = 0; k < ASKED; k++) {
    const [asked, used] = [performance.now(), process.cpuUsage()];
    const answer = await school.server.inject({ url: `/api/classes/${seats[0]?.classId}/desk`, cookies: head.cookies });
    times.push(performance.now() - asked);
    const { user, system } = process.cpuUsage(used);
    worked.push((user + system) / 1000);
    if (answer.statusCode !== 200) throw new Error(answer.body);
    bytes = answer.rawPayload.length;
  }
  await school.server.close();
  await database.close();
  tell(
    `${name}, desk of ${PEOPLE} people with ${Number(count)} attempts at ${PROFILES.length} locks (seeded in ${seconds.toFixed(0)} s)`,
  );
  tell(`  table of ${(bytes / 1e6).toFixed(1)} MB, asked for ${ASKED} times: ${timesText(times)} (aim: 300 ms)`);
  tell(`  processor time of each: ${timesText(worked)}`);
}
