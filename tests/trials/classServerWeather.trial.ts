import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { startPostgres } from "../server/support/postgresServer";
import { BadProxy } from "../server/weather/badProxy";
import { type SpawnedServer, spawnServer } from "../server/weather/spawnedServer";
import { embeddedWeather, postgresWeather, type WeatherDatabase } from "../server/weather/weatherEngines";
import { heldAgainst, WeatherBench, weatherSchool } from "../server/weather/weatherSchool";
import type { Trial, TrialContext } from "./trial";

/*
 * The class server in other bad weather: a proxy that cuts, delays, doubles and reorders; PostgreSQL stopped and started
 * under it; two servers on one database, one of them killed. Whatever was acknowledged is there, once, in one chain.
 */

const sleep = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

interface Storm {
  readonly benches: readonly WeatherBench[];
  readonly weather: WeatherDatabase;
  readonly context: TrialContext;
}

/** Benches of a school in a database of its own; what they were told is held against it at the end. */
async function inStorm(
  name: string,
  weather: WeatherDatabase,
  context: TrialContext,
  blow: (storm: Storm) => Promise<void>,
): Promise<void> {
  const first = await weather.open();
  const school = await weatherSchool(first);
  await first.close();
  const benches = Array.from({ length: 4 }, (_, k) => new WeatherBench(school, k, context.chance));
  await blow({ benches, weather, context });
  const last = await weather.open();
  const { acknowledged, found, rows, problems } = await heldAgainst(last, benches);
  const told = benches.reduce((sum, { refusals }) => sum + refusals.told, 0);
  const unanswered = benches.reduce((sum, { refusals }) => sum + refusals.unanswered, 0);
  process.stdout.write(
    `${name}: ${acknowledged} acknowledged, ${found} found, ${rows} rows; told to try again ${told}, unanswered ${unanswered}\n`,
  );
  for (const problem of problems) context.fail(`${name}: ${problem}`);
  if (problems.length === 0 && acknowledged > 0) context.pass();
  else if (acknowledged === 0) context.fail(`${name}: nothing was acknowledged`);
  await last.close();
}

/** Every bench sends without a pause while something goes on. @param addressOf - where a bench sends to now */
async function sendingWhile(
  benches: readonly WeatherBench[],
  addressOf: (bench: number) => string,
  during: () => Promise<void>,
): Promise<void> {
  let isOver = false;
  const sending = benches.map(async (bench, k) => {
    while (!isOver) {
      await bench.send(addressOf(k), 3000);
      // Whoever is told to wait does not come back at once.
      await sleep(5);
    }
  });
  await during();
  isOver = true;
  await Promise.all(sending);
}

const acknowledgedBy = (benches: readonly WeatherBench[]) =>
  benches.reduce((sum, { acknowledged }) => sum + acknowledged.size, 0);

/** Waits until more was acknowledged than there is now. */
async function untilMore(benches: readonly WeatherBench[], most_ms: number): Promise<boolean> {
  const before = acknowledgedBy(benches);
  for (const ends = performance.now() + most_ms; performance.now() < ends; await sleep(20)) {
    if (acknowledgedBy(benches) > before) return true;
  }
  return false;
}

/** A proxy of our own between benches and server. */
const throughProxy =
  (seconds: number) =>
  async ({ benches, weather, context }: Storm) => {
    const server = await spawnServer(weather.data, weather.address);
    const proxy = await BadProxy.before(server.address, context.chance);
    await sendingWhile(
      benches,
      () => proxy.address,
      () => sleep(1000 * seconds),
    );
    process.stdout.write(`proxy: ${JSON.stringify(proxy.done)}\n`);
    await proxy.close();
    await server.kill();
  };

/** PostgreSQL stopped and started under a server, which is not restarted. */
async function databaseComesAndGoes(context: TrialContext, folder: string): Promise<void> {
  const postgres = await startPostgres();
  const weather = await postgresWeather(folder, postgres);
  await inStorm("PostgreSQL stopped and started", weather, context, async ({ benches }) => {
    const server = await spawnServer(weather.data, weather.address);
    await sendingWhile(
      benches,
      () => server.address,
      async () => {
        for (let round = 0; round < 5; round++) {
          if (!(await untilMore(benches, 20_000))) context.fail("the server did not recover by itself");
          await sleep(300 * context.chance());
          await postgres.stop();
          await sleep(500);
          await postgres.start();
        }
        if (!(await untilMore(benches, 20_000))) context.fail("the server did not recover by itself");
      },
    );
    await server.kill();
  });
  await postgres.remove();
}

/** Kills one server of two, sees the other go on, and starts the first again. */
async function killOne(servers: SpawnedServer[], k: number, spawn: () => Promise<SpawnedServer>, storm: Storm) {
  const { benches, context } = storm;
  if (!(await untilMore(benches, 20_000))) context.fail("nothing is acknowledged any more");
  await sleep(400 * context.chance());
  await servers[k]?.kill();
  if (!(await untilMore(benches, 20_000))) context.fail("the other server does not go on");
  servers[k] = await spawn();
}

/** Two servers on one database; one of them is killed and comes back. */
async function twoServers(context: TrialContext, folder: string): Promise<void> {
  const postgres = await startPostgres();
  const weather = await postgresWeather(folder, postgres);
  await inStorm("two servers, one killed", weather, context, async (storm) => {
    const spawn = (k: number): Promise<SpawnedServer> => spawnServer(join(folder, `server${k}`), weather.address);
    const servers = [await spawn(0), await spawn(1)];
    await sendingWhile(
      storm.benches,
      (k) => servers[k % 2]?.address ?? "",
      async () => {
        for (let round = 0; round < 6; round++) await killOne(servers, round % 2, () => spawn(round % 2), storm);
      },
    );
    for (const server of servers) await server.kill();
  });
  await postgres.remove();
}

export const trial: Trial = {
  name: "class server in bad weather",
  async run(context) {
    const folderOf = async (name: string) => {
      const folder = join(context.folder, name);
      await mkdir(folder, { recursive: true });
      return folder;
    };
    const embedded = await embeddedWeather(await folderOf("embedded"));
    await inStorm("proxy, embedded", embedded, context, throughProxy(20));
    const postgres = await postgresWeather(await folderOf("postgres"));
    await inStorm("proxy, PostgreSQL", postgres, context, throughProxy(20));
    await postgres.remove();
    await databaseComesAndGoes(context, await folderOf("comes-and-goes"));
    await twoServers(context, await folderOf("two"));
  },
};
