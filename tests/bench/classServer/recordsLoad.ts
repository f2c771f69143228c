import { gzipSync } from "node:zlib";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { demoAttempt } from "../../../src/progress/demo/demoAttempt";
import { toBase64 } from "../../../src/records/motion/base64";
import { lookedAt } from "../../../src/school/records/sentRecords";
import type { SentRecord } from "../../../src/school/wire/recordsWire";
import type { OpenDatabase } from "../../../src/server/database/openDatabase";
import { type Chance, seededChance } from "../../../src/statistics/chance";
import { testSchool, testServer } from "../../server/support/testSchool";
import { spawnServer } from "../../server/weather/spawnedServer";
import type { WeatherDatabase } from "../../server/weather/weatherEngines";
import { type Seat, seatBenches } from "./seats";
import { sleep, tell, timesText } from "./told";

/** Attempts of a lesson that a bench sends when the network is back, and how many go in one part. */
const LESSON = 20;
const PART = 5;
/** A bench at work sends one attempt in so many seconds, for so many seconds. */
const EVERY_S = 15;
const AT_WORK_S = 30;
const PER_CLASS = 25;

/** Told to try again, a bench waits so long, ms. */
const AGAIN_MS = 500;

interface Sending {
  readonly address: string;
  readonly times: number[];
  /** How often benches were told to try again. */
  again: number;
}

async function send(sending: Sending, seat: Seat, body: Uint8Array<ArrayBuffer>): Promise<void> {
  const { address, times } = sending;
  const begin = performance.now();
  const response = await fetch(`${address}api/bench/records`, {
    method: "POST",
    headers: { "content-type": "application/json", "content-encoding": "gzip", cookie: seat.cookie },
    body,
  });
  const text = await response.text();
  if (response.status === 503) {
    sending.again += 1;
    await sleep(AGAIN_MS);
    return send(sending, seat, body);
  }
  times.push(performance.now() - begin);
  if (response.status !== 200) throw new Error(`${response.status} ${text.slice(0, 200)}`);
}

/** An attempt by a simulated hand, under a new id. */
class Attempts {
  private readonly dialed;
  private made = 0;

  constructor(chance: Chance) {
    const profile = shippedProfile("three-wheel");
    const hand = { bias: 0, spread: 0.5, miscounts: 0, speed: 30 };
    const one = { personId: "", profile, hand, startedAt: Date.UTC(2026, 2, 2, 9), help: "counts" as const };
    this.dialed = Array.from({ length: 40 }, () => demoAttempt(one, chance));
  }

  next(personId: string): SentRecord {
    const k = this.made++;
    const { record, trace } = this.dialed[k % this.dialed.length] ?? {};
    if (record === undefined || trace === undefined) throw new RangeError("no attempt was dialed");
    const startedAt = record.startedAt + k;
    return {
      kind: "attempts",
      record: { ...record, id: `attempt-${k}`, personId, startedAt },
      motion: toBase64(trace),
    };
  }
}

const packed = (records: readonly SentRecord[]) =>
  new Uint8Array(gzipSync(JSON.stringify({ sentAt: Date.UTC(2026, 2, 2, 9), records })));

/** Every bench sends its lesson at once, each part twice. @returns seconds */
async function lessons(sending: Sending, seats: readonly Seat[], parts: ReadonlyMap<Seat, SentRecord[][]>) {
  const bodies = new Map(seats.map((seat) => [seat, (parts.get(seat) ?? []).map(packed)]));
  const begin = performance.now();
  await Promise.all(
    seats.map(async (seat) => {
      for (const body of bodies.get(seat) ?? []) {
        await send(sending, seat, body);
        await send(sending, seat, body);
      }
    }),
  );
  return (performance.now() - begin) / 1000;
}

/** Every bench sends an attempt now and then, twice. @returns how many attempts */
async function atWork(sending: Sending, seats: readonly Seat[], attempts: Attempts, chance: Chance): Promise<number> {
  const rounds = AT_WORK_S / EVERY_S;
  const bodies = seats.map((seat) => Array.from({ length: rounds }, () => packed([attempts.next(seat.personId)])));
  await Promise.all(
    seats.map(async (seat, k) => {
      await sleep(1000 * EVERY_S * chance());
      for (const body of bodies[k] ?? []) {
        const next = performance.now() + 1000 * EVERY_S;
        await send(sending, seat, body);
        await send(sending, seat, body);
        await sleep(Math.max(0, next - performance.now()));
      }
    }),
  );
  return seats.length * rounds;
}

/** The same rows by plain insertions, a part in each transaction, one after the other. @returns rows a second */
async function bare({ query }: OpenDatabase, schoolId: string, parts: readonly (readonly SentRecord[])[]) {
  const rowsOf = (part: readonly SentRecord[]) =>
    part.flatMap((sent) => {
      const looked = lookedAt(sent);
      if (!("record" in looked)) return [];
      const { id, kind, personId, startedAt, sha256, body, motion } = looked.record;
      const of = { school_id: schoolId, id: `bare-${id}`, kind, person_id: personId, device_id: "" };
      const when = { started_at: startedAt, received_at: 0, clock_ahead_ms: 0 };
      return [{ ...of, ...when, place: 0, sha256, body, motion }];
    });
  const all = parts.map(rowsOf);
  const begin = performance.now();
  for (const rows of all) {
    await query.transaction().execute((held) => held.insertInto("records").values(rows).execute());
  }
  return (1000 * all.flat().length) / (performance.now() - begin);
}

/** Benches of a school that send all they have twice; the rows are counted. */
export async function recordsLoad(name: string, weather: WeatherDatabase, benches: number): Promise<void> {
  const chance = seededChance(benches);
  const first = await weather.open();
  const school = await testServer({ ...first, remove: first.close });
  const { schoolId } = await testSchool(school, "Millbrook");
  const seats = await seatBenches(school, schoolId, benches, PER_CLASS);
  await school.server.close();
  await first.close();
  const attempts = new Attempts(chance);
  const partsOf = ({ personId }: Seat) =>
    Array.from({ length: LESSON / PART }, () => Array.from({ length: PART }, () => attempts.next(personId)));
  const parts = new Map(seats.map((seat) => [seat, partsOf(seat)]));
  const server = await spawnServer(weather.data, weather.address);
  const sending = (): Sending => ({ address: server.address, times: [], again: 0 });
  const [working, coming] = [sending(), sending()];
  const some = await atWork(working, seats, attempts, chance);
  const used = await server.used();
  const seconds = await lessons(coming, seats, parts);
  const busy = (await server.used()) - used;
  await server.kill();
  const last = await weather.open();
  const { count } = await last.query
    .selectFrom("records")
    .select((of) => of.fn.countAll<number>().as("count"))
    .executeTakeFirstOrThrow();
  const rows = benches * LESSON;
  const limit = await bare(last, schoolId, [...parts.values()].flat());
  await last.close();
  const perSecond = rows / seconds;
  tell(`${name}, ${benches} benches, each record twice`);
  tell(`  at work, an attempt every ${EVERY_S} s: ${working.times.length} requests, ${timesText(working.times)}`);
  tell(
    `  ${LESSON} attempts each at once, ${PART} in a part: ${coming.times.length} requests, ${timesText(coming.times)}`,
  );
  tell(
    `  rows ${Number(count)} of ${rows + some}; ${seconds.toFixed(1)} s, ${(busy / 1000).toFixed(1)} s of processor time`,
  );
  tell(`  told to try again ${working.again + coming.again} times`);
  tell(
    `  ${perSecond.toFixed(0)} rows a second; bare insertions ${limit.toFixed(0)}; ratio ${(limit / perSecond).toFixed(1)}`,
  );
  if (Number(count) !== rows + some) throw new Error(`${Number(count)} rows instead of ${rows + some}`);
}
