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

async function onEngine(
  name: string,
  make: typeof embeddedWeather | typeof postgresWeather,
  { chance, folder, hasTime, pass, fail }: TrialContext,
): Promise<void> {
  const own = join(folder, name);
  await mkdir(own, { recursive: true });
  const weather = await make(own);
  const first = await weather.open();
  const school = await weatherSchool(first);
  await first.close();
  const benches = Array.from({ length: BENCHES }, (_, k) => new WeatherBench(school, k, chance));
  let kills = 0;
  for (; kills < KILLS && (kills === 0 || hasTime()); kills++) {
    const server = await spawnServer(weather.data, weather.address);
    if (await sendUntilKilled(server, benches, 400 * chance())) pass();
    else fail(`${name}: after ${kills} kills nothing is acknowledged: ${benches.flatMap(({ wrong }) => wrong).at(-1)}`);
  }
  const last = await weather.open();
  const { acknowledged, found, rows, problems } = await heldAgainst(last, benches);
  process.stdout.write(
    `${name}: ${kills} kills, ${acknowledged} acknowledged, ${found} found, ${rows} rows, ${problems.length} problems\n`,
  );
  for (const problem of problems) fail(`${name}: ${problem}`);
  await last.close();
  await weather.remove();
}

export const trial: Trial = {
  name: "class server killed while it receives",
  async run(context) {
    // The one that starts in less time first: the other has all that is left.
    await onEngine("PostgreSQL", postgresWeather, context);
    await onEngine("embedded", embeddedWeather, context);
  },
};
