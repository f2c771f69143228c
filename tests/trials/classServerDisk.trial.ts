import { spawnSync } from "node:child_process";
import { cp, mkdir } from "node:fs/promises";
import { join } from "node:path";
import { type OpenDatabase, openEmbedded } from "../../src/server/database/openDatabase";
import { emptyDatabase } from "../server/support/engines";
import { type SpawnedServer, spawnServer } from "../server/weather/spawnedServer";
import { heldAgainst, WeatherBench, weatherSchool } from "../server/weather/weatherSchool";
import type { Trial, TrialContext } from "./trial";

/*
 * The disk of the embedded database full while it receives: nothing that was acknowledged is lost, and once there is room the
 * server goes on, by itself or started again. It needs a small file system of its own, which only root may mount.
 */

const SMALL_MB = 72;
const LARGE_MB = 160;
const PART_ms = 15_000;

const mount = (folder: string, options: string): boolean =>
  spawnSync("mount", ["-t", "tmpfs", "-o", options, "tmpfs", folder]).status === 0;

/** Sends until the server answers that it cannot, or ends. @returns what it did; null where the time ran out first */
async function sendUntilFull(
  server: SpawnedServer,
  bench: WeatherBench,
  hasTime: () => boolean,
): Promise<string | null> {
  const { refusals, wrong } = bench;
  while (hasTime()) {
    await bench.send(server.address, PART_ms);
    if (server.process.exitCode !== null) return `ended with ${server.process.exitCode}`;
    if (refusals.told > 0) return "told the bench to try again";
    if (wrong.length > 0) return `answered ${wrong.splice(0).join("; ").slice(0, 200)}`;
    if (refusals.unanswered > 0) return "did not answer";
  }
  return null;
}

async function onSmallDisk({ chance, hasTime, pass, fail }: TrialContext, folder: string): Promise<void> {
  await cp(await emptyDatabase(), join(folder, "database"), { recursive: true });
  let database: OpenDatabase = await openEmbedded(folder);
  const school = await weatherSchool(database);
  await database.close();
  const bench = new WeatherBench(school, "bench", chance);
  let server = await spawnServer(folder);
  const did = await sendUntilFull(server, bench, hasTime);
  if (did === null) {
    await server.kill();
    process.stdout.write(`the disk was not full after ${bench.acknowledged.size}: not tried further\n`);
    return pass();
  }
  const atFull = bench.acknowledged.size;
  if (!mount(folder, `remount,size=${LARGE_MB}m`)) throw new Error("the disk cannot be made larger");
  await bench.send(server.address, PART_ms);
  const isSelf = bench.acknowledged.size > atFull;
  await server.kill();
  server = await spawnServer(folder);
  await bench.send(server.address, PART_ms);
  if (bench.acknowledged.size === atFull) fail("with room again nothing is taken");
  await server.kill();
  database = await openEmbedded(folder);
  const { acknowledged, found, problems } = await heldAgainst(database, [bench]);
  await database.close();
  process.stdout.write(
    `disk of ${SMALL_MB} MB full after ${atFull}: the server ${did}; with room it ${isSelf ? "went on by itself" : "went on when started again"}; ${acknowledged} acknowledged, ${found} found\n`,
  );
  for (const problem of problems) fail(problem);
  if (problems.length === 0) pass();
}

export const trial: Trial = {
  name: "class server with a full disk",
  async run(context) {
    const folder = join(context.folder, "disk");
    await mkdir(folder);
    if (!mount(folder, `size=${SMALL_MB}m`)) {
      process.stdout.write("no file system can be mounted here: not tried\n");
      context.pass();
      return;
    }
    try {
      await onSmallDisk(context, folder);
    } finally {
      spawnSync("umount", ["-l", folder]);
    }
  },
};
