import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { type SpawnedServer, spawnServer } from "../server/weather/spawnedServer";
import { embeddedWeather, postgresWeather } from "../server/weather/weatherEngines";
import { heldAgainst, WeatherBench, weatherSchool } from "../server/weather/weatherSchool";
import type { Trial, TrialContext } from "./trial";

/*
 * The class server killed (SIGKILL) in the middle of receiving, over and over, on each database: whatever it acknowledged is
 * there, once, as it was sent, and the chain holds. After each kill it starts on what the one before left.
 */

const KILLS = 100;
const BENCHES = 4;
/**
 * A server that was started on what a killed one left acknowledges something within this time, ms. It needs a third of a second of
 * a processor for it; where other work leaves it 2 % of one, that is a minute, and more where benches give up and ask again.
 */
const SOON_ms = 300_000;
/** How long a bench waits for an answer, ms: on a busy machine one that waits for less is never answered. */
const PATIENCE_ms = 60_000;

const sleep = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

/** What is known of a server that acknowledges nothing: whether it works, and what the benches heard. */
async function howItFares(server: SpawnedServer, benches: readonly WeatherBench[]): Promise<string> {
  const used = await Promise.race([server.used(), sleep(5000).then(() => "no answer, ")]);
  const heard = benches.map(({ refusals: { told, unanswered } }) => `${told} told, ${unanswered} unanswered`);
  return `processor time of the server: ${used} ms; so far, bench by bench: ${heard.join("; ")}`;
}

/** Benches that send without a pause until the server dies, some time after it acknowledged the first. */
async function sendUntilKilled(server: SpawnedServer, benches: readonly WeatherBench[], after_ms: number) {
  let isDead = false;
  const count = () => benches.reduce((sum, { acknowledged }) => sum + acknowledged.size, 0);
  const before = count();
  const sending = benches.map(async (bench) => {
    while (!isDead) await bench.send(server.address, PATIENCE_ms);
  });
  const ends = performance.now() + SOON_ms;
  while (count() === before && performance.now() < ends) await sleep(5);
  const isAlive = count() > before;
  if (!isAlive) process.stdout.write(`${await howItFares(server, benches)}\n`);
  await sleep(after_ms);
  await server.kill();
  isDead = true;
  await Promise.all(sending);
  return isAlive;
}

/** A database that servers are killed on. */
interface Killing {
  /** Starts a server, has benches send to it, and kills it. */
  readonly killOne: () => Promise<void>;
  /** Holds all that was acknowledged against what is there. */
  readonly end: () => Promise<void>;
}

async function onEngine(
  name: string,
  make: typeof embeddedWeather | typeof postgresWeather,
  { chance, folder, pass, fail }: TrialContext,
): Promise<Killing> {
  const own = join(folder, name);
  await mkdir(own, { recursive: true });
  const weather = await make(own);
  const first = await weather.open();
  const school = await weatherSchool(first);
  await first.close();
  const benches = Array.from({ length: BENCHES }, (_, k) => new WeatherBench(school, k, chance));
  let kills = 0;
  return {
    async killOne() {
      const server = await spawnServer(weather.data, weather.address);
      const isAlive = await sendUntilKilled(server, benches, 400 * chance());
      kills += 1;
      const wrong = benches.flatMap((bench) => bench.wrong).at(-1);
      if (isAlive) pass();
      else fail(`${name}: nothing is acknowledged before kill ${kills}: ${wrong}`);
    },
    async end() {
      const last = await weather.open();
      const { acknowledged, found, rows, problems } = await heldAgainst(last, benches);
      const counts = `${acknowledged} acknowledged, ${found} found, ${rows} rows, ${problems.length} problems`;
      process.stdout.write(`${name}: ${kills} kills, ${counts}\n`);
      for (const problem of problems) fail(`${name}: ${problem}`);
      await last.close();
      await weather.remove();
    },
  };
}

export const trial: Trial = {
  name: "class server killed while it receives",
  async run(context) {
    const engines = [
      await onEngine("PostgreSQL", postgresWeather, context),
      await onEngine("embedded", embeddedWeather, context),
    ];
    // In turn, so that each has its share of the time.
    for (let k = 0; k < KILLS && (k === 0 || context.hasTime()); k++) {
      for (const { killOne } of engines) await killOne();
    }
    for (const { end } of engines) await end();
  },
};
