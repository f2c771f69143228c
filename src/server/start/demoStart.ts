import { randomBytes } from "node:crypto";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type * as z from "zod/mini";
import { DEMO_CLASS, DEMO_SCHOOL } from "../../school/demo/demoClass";
import type { classCode } from "../../school/wire/classWire";
import { openEmbedded } from "../database/openDatabase";
import { type DemoSetting, runDemoWeek } from "../demo/demoWeek";
import { inviteFirst } from "../people/links";
import { newSecret } from "../security/secrets";
import { keyFolder } from "../signing/keyFolder";
import type { World } from "../world/world";
import { classServer } from "./classServer";
import type { StartOptions } from "./options";
import { programVersion } from "./programVersion";
import { type Running, start } from "./running";

/** What a person must know of the demo to look at it. */
export interface Demo {
  readonly school: string;
  readonly apprentices: number;
  readonly login: string;
  readonly password: string;
  /** By which further benches join the class. */
  readonly code: string;
}

/** Which demo is made. */
type Which = Pick<DemoSetting, "seed" | "apprentices">;

/** Every demo on a screen is the same one, but for what the server draws itself. */
const USUAL: Which = { seed: 7, apprentices: DEMO_CLASS };

const HOUR_MS = 3600 * 1000;
const DAY_MS = 24 * HOUR_MS;
/** Longest that a code lives. */
const CODE_HOURS = 14 * 24;
const PASSWORD_LETTERS = 12;

/** The Monday of the last week whose Friday is over, milliseconds since 1970; the first day of 1970 was a Thursday. */
export function lastMonday(now: number): number {
  const monday = (day: number) => (day - ((day + 3) % 7)) * DAY_MS;
  const today = Math.floor(now / DAY_MS);
  const isOver = now >= monday(today) + 4 * DAY_MS + 17 * HOUR_MS;
  return isOver ? monday(today) : monday(today) - 7 * DAY_MS;
}

/** Makes the week in a new folder, by a server that nobody can reach, its clock moved through the week. */
async function makeWeek(data: string, now: number, { seed, apprentices }: Which): Promise<Demo> {
  const database = await openEmbedded(data);
  const monday = lastMonday(now);
  let clock = monday;
  const world: World = {
    database: database.query,
    now: () => clock,
    chance: randomBytes,
    keys: keyFolder(data),
    channel: database.channel,
    appVersion: programVersion(),
  };
  const server = await classServer(world);
  const passTo = (at: number) => {
    clock = at;
  };
  try {
    const [token, password] = [await inviteFirst(world), newSecret(world).slice(0, PASSWORD_LETTERS)];
    const setting = { server, passTo, seed, apprentices, monday, token, password, appVersion: world.appVersion };
    const { classId, instructor } = await runDemoWeek(setting);
    passTo(now);
    const login = DEMO_SCHOOL.instructor;
    await instructor.post("/api/sign-in", { login, password });
    const codes = `/api/classes/${classId}/codes`;
    const { code } = await instructor.post<z.infer<typeof classCode>>(codes, { hours: CODE_HOURS });
    await instructor.post("/api/sign-out", {});
    return { school: DEMO_SCHOOL.name, apprentices, login, password, code };
  } finally {
    await server.close();
    await database.close();
  }
}

/**
 * Starts a class server that shows a week of an invented class. Its data lies in a folder of its own, which goes when it stops;
 * no other folder and no database is touched.
 *
 * @param app - folder of the built app
 * @param which - another demo than the usual one
 * @throws {ServerError} where the port cannot be had
 */
export async function startDemo(
  options: Omit<StartOptions, "data" | "database">,
  app: string,
  which = USUAL,
): Promise<{ readonly running: Running; readonly demo: Demo }> {
  const data = await mkdtemp(join(tmpdir(), "gatefall-demo-"));
  const remove = () => rm(data, { recursive: true, force: true });
  try {
    const demo = await makeWeek(data, Date.now(), which);
    const running = await start({ ...options, data, database: undefined }, app);
    return { running: { ...running, stop: () => running.stop().finally(remove) }, demo };
  } catch (error) {
    await remove();
    throw error;
  }
}
