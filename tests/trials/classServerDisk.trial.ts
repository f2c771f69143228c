import { spawnSync } from "node:child_process";
import { mkdir, rm, statfs, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { type OpenDatabase, openEmbedded } from "../../src/server/database/openDatabase";
import { layEmptyDatabase } from "../server/support/emptyDatabase";
import { type SpawnedServer, spawnServer } from "../server/weather/spawnedServer";
import { heldAgainst, WeatherBench, weatherSchool } from "../server/weather/weatherSchool";
import type { Trial, TrialContext } from "./trial";

/*
 * The disk of the embedded database full while it receives, over and over: nothing that was acknowledged is lost, and once there
 * is room the server goes on, by itself or started again. It needs a small file system of its own, which only root may mount;
 * a file beside the database takes its room and gives it back.
 */

const DISK_MB = 160;
/** Room that is left at first, so that it is full at once, and at most: more than what the server keeps free (48 MB). */
const [FIRST_MB, MOST_MB] = [0.3, 60];
const ROUNDS = 20;
const PART_ms = 15_000;
const MB = 2 ** 20;

const mount = (folder: string): boolean =>
  spawnSync("mount", ["-t", "tmpfs", "-o", `size=${DISK_MB}m`, "tmpfs", folder]).status === 0;

const sleep = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

/** Takes all room on a disk but some. @param left_MB - what is left */
async function takeRoom(folder: string, left_MB: number): Promise<void> {
  const { bavail, bsize } = await statfs(folder);
  const bytes = Math.max(0, bavail * bsize - Math.floor(left_MB * MB));
  await writeFile(join(folder, "ballast"), new Uint8Array(bytes));
}

const giveRoom = (folder: string) => rm(join(folder, "ballast"));

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

/** A server on a disk, started again where it ended. */
class OnDisk {
  server: SpawnedServer | null = null;
  private readonly folder: string;

  constructor(folder: string) {
    this.folder = folder;
  }

  async running(): Promise<SpawnedServer> {
    if (this.server?.process.exitCode !== null) this.server = await spawnServer(this.folder);
    return this.server;
  }

  async again(): Promise<SpawnedServer> {
    await this.server?.kill();
    this.server = await spawnServer(this.folder);
    return this.server;
  }
}

/** What the server did when there was no room, and when there was room again. */
interface Full {
  readonly did: string;
  readonly went: "by itself" | "when started again" | "not at all";
}

/** Fills the disk once, and makes room again. @returns null where the time ran out before it was full */
async function fillOnce(
  on: OnDisk,
  bench: WeatherBench,
  folder: string,
  left_MB: number,
  hasTime: () => boolean,
): Promise<Full | null> {
  const server = await on.running();
  Object.assign(bench.refusals, { told: 0, unanswered: 0 });
  await takeRoom(folder, left_MB);
  const did = await sendUntilFull(server, bench, hasTime);
  await giveRoom(folder);
  if (did === null) return null;
  const atFull = bench.acknowledged.size;
  for (const ends = performance.now() + PART_ms; performance.now() < ends && bench.acknowledged.size === atFull; ) {
    await bench.send(server.address, PART_ms);
    await sleep(200);
  }
  if (bench.acknowledged.size > atFull) return { did, went: "by itself" };
  await bench.send((await on.again()).address, PART_ms);
  return { did, went: bench.acknowledged.size > atFull ? "when started again" : "not at all" };
}

/** Fills the disk over and over; it counts each way that it went. */
async function fillOften(
  on: OnDisk,
  bench: WeatherBench,
  folder: string,
  { chance, hasTime, pass, fail }: TrialContext,
): Promise<ReadonlyMap<string, number>> {
  const ways = new Map<string, number>();
  const count = (left_MB: number, { did, went }: Full) => {
    const way = `the server ${did}, with room it went on ${went}`;
    ways.set(way, (ways.get(way) ?? 0) + 1);
    if (went === "by itself") pass();
    else fail(`${left_MB.toFixed(1)} MB left: ${way}`);
  };
  for (let round = 0; round < ROUNDS; round++) {
    // The first time it must be full, however long that takes.
    const isFirst = round === 0;
    const left_MB = isFirst ? FIRST_MB : MOST_MB * chance();
    const full = await fillOnce(on, bench, folder, left_MB, isFirst ? () => true : hasTime);
    if (full === null) break;
    count(left_MB, full);
  }
  return ways;
}

async function onSmallDisk(context: TrialContext, folder: string): Promise<void> {
  await layEmptyDatabase(folder);
  let database: OpenDatabase = await openEmbedded(folder);
  const school = await weatherSchool(database);
  await database.close();
  const bench = new WeatherBench(school, 0, context.chance);
  const on = new OnDisk(folder);
  const ways = await fillOften(on, bench, folder, context);
  await on.server?.kill();
  database = await openEmbedded(folder);
  const { acknowledged, found, problems } = await heldAgainst(database, [bench]);
  await database.close();
  for (const [way, times] of ways) process.stdout.write(`${times} times full: ${way}\n`);
  process.stdout.write(`${acknowledged} acknowledged, ${found} found\n`);
  for (const problem of problems) context.fail(problem);
}

export const trial: Trial = {
  name: "class server with a full disk",
  async run(context) {
    const folder = join(context.folder, "disk");
    await mkdir(folder);
    if (!mount(folder)) {
      process.stdout.write("no file system can be mounted here, which takes root: not tried\n");
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
