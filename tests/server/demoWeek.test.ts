import { existsSync } from "node:fs";
import { mkdtemp, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { demoClass } from "../../src/school/demo/demoClass";
import { checkSchools } from "../../src/server/backup/checkDatabase";
import { lastMonday, startDemo } from "../../src/server/start/demoStart";
import { readOptions } from "../../src/server/start/options";
import { seededChance } from "../../src/statistics/chance";
import { demoWeekOn } from "./support/demoWeekOn";
import { ENGINES } from "./support/engines";

const FOUR = { apprentices: 4, seed: 5 };

/** What each engine has of the same week: ids and hashes of its records. */
const held = new Map<string, readonly object[]>();

describe.each(ENGINES)("a week of an invented class on $engine", ({ engine, open }) => {
  test("comes in whole, each record once, every sitting agreed with", { timeout: 60_000 }, async () => {
    const database = await open();
    const { school, week, kinds } = await demoWeekOn(database, FOUR);
    // 4 apprentices x 4 days x 2 locks x 5 attempts, 4 sittings of 20 tries and 3 of 12; 2 jobs of each of 6 kinds.
    expect(kinds).toEqual({ attempts: 160 + 4 * 20 + 3 * 12, declarations: 3, jobs: 48, sittings: 7 });
    const rows = await database.query.selectFrom("records").select(["id", "sha256"]).orderBy("id").execute();
    expect(week).toMatchObject({ acknowledged: rows.length, sittings: 7 });
    // One bench sends all that it has twice.
    expect(week.known).toBeGreaterThan(20);
    held.set(engine, rows);
    type Results = { people: { results: { latest: { outcome: string | null; problems: number } | null }[] }[] };
    const { people } = await week.instructor.get<Results>(`/api/classes/${week.classId}/results`);
    const latest = people.flatMap(({ results }) => results.flatMap((one) => one.latest ?? []));
    expect(latest.map(({ problems }) => problems)).toEqual(latest.map(() => 0));
    // The class is of different skill.
    expect(new Set(latest.map(({ outcome }) => outcome))).toEqual(new Set(["passed", "failed"]));
    const desk = await week.instructor.get<{ rows: unknown[] }>(`/api/classes/${week.classId}/desk`);
    expect(desk.rows).toHaveLength(4);
    const none = { read: async () => null, write: async () => undefined };
    const [check] = await database.query.transaction().execute((transaction) => checkSchools(transaction, none));
    expect(check).toMatchObject({ records: rows.length, problems: [] });
    await school.server.close();
    await database.remove();
  });
});

test("the same seed makes the same records", () => {
  const [one = [], other] = [...held.values()];
  expect(one.length).toBeGreaterThan(300);
  expect(other).toEqual(one);
});

test("another seed makes another class, its skills spread over all that there is", () => {
  const classOf = (seed: number) => demoClass(24, seededChance(seed));
  expect(classOf(5)).toEqual(classOf(5));
  expect(classOf(6)).not.toEqual(classOf(5));
  const skills = classOf(5).map(({ skill }) => skill);
  expect(skills.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 24 }, (_, k) => k / 23));
});

test.each([
  { why: "a Sunday", now: "2026-11-29T12:00Z", monday: "2026-11-23" },
  { why: "a Friday afternoon at work", now: "2026-11-27T16:59Z", monday: "2026-11-16" },
  { why: "the same Friday after work", now: "2026-11-27T17:00Z", monday: "2026-11-23" },
  { why: "a Monday", now: "2026-11-30T00:00Z", monday: "2026-11-23" },
])("on $why the demo shows the week that is over", ({ now, monday }) => {
  expect(new Date(lastMonday(Date.parse(now))).toISOString().slice(0, 10)).toBe(monday);
});

test.each([
  { args: ["--demo", "--data", "school"], came: "demo-alone" },
  { args: ["--demo", "--database", "postgres://a@b/c"], came: "demo-alone" },
  { args: ["--demo", "check"], came: "demo-alone" },
  { args: ["--demo", "--port", "8081"], came: "demo" },
  { args: ["--port", "8081"], came: "start" },
])("asked by $args it is: $came", ({ args, came }) => {
  const asked = () => readOptions(args, { GATEFALL_DATA: "/school" }).kind;
  if (came === "demo-alone") expect(asked).toThrow(/invented data alone/);
  else expect(asked()).toBe(came);
});

test("a demo starts in a folder of its own, lets its instructor in, and leaves nothing", {
  timeout: 60_000,
}, async () => {
  const app = await mkdtemp(join(tmpdir(), "gatefall-app-"));
  await writeFile(join(app, "index.html"), "<head></head>");
  const options = { host: "127.0.0.1", port: 0, isBehindProxy: false, tls: undefined, app };
  const { running, demo } = await startDemo(options, app, { seed: 5, apprentices: 1 });
  expect(running.place).toMatch(/gatefall-demo-\w+$/);
  const ask = (path: string, body: object) =>
    fetch(`${running.addresses[0]}api/${path}`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(body),
    });
  const { login, password, code } = demo;
  expect((await ask("sign-in", { login, password })).status).toBe(200);
  expect((await ask("join", { code, name: "Somebody new", bench: "Window" })).status).toBe(200);
  expect(running.firstLink).toBeNull();
  await running.stop();
  expect(existsSync(running.place)).toBe(false);
  expect(await readdir(app)).toEqual(["index.html"]);
  await rm(app, { recursive: true });
});
