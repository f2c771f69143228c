import { describe, expect, test } from "vitest";
import { decodeTrace } from "../../src/records/motion/traceCodec";
import { settingsKey } from "../../src/records/settingsKey";
import { allAttempts, attemptPage, countAttempts, motionOf } from "../../src/store/attemptQueries";
import { tagsOfAttempts } from "../../src/store/attemptTags";
import { Logbook } from "../../src/store/logbook";
import { DATABASE_VERSION, LogbookDatabase } from "../../src/store/logbookDatabase";
import { runningSittings } from "../../src/store/sittingQueries";
import { deletePerson, recordsOfKind } from "../../src/store/wholeLogbook";
import { aJob, emptyHost, SHORT_TRACE } from "../support/logbookRecords";
import { rawDatabase } from "../support/rawDatabase";

/** Tables and indexes of version 1, as the browser has them; literal, for they will never change. */
const TABLES_1 = {
  people: [],
  attempts: ["personId", "startedAt"],
  zeroings: ["personId"],
  sittings: ["personId"],
  sheets: [],
  settings: [],
};

const PERSON_1 = { id: "p1", createdAt: 1, updatedAt: 1, name: "Tavro", part: "trainee" };

const stamp = (id: string) => ({ id, createdAt: 1, updatedAt: 1, personId: "p1", startedAt: 1 });

const ATTEMPT_1 = {
  id: "a1",
  createdAt: 1_700_000_000_000,
  updatedAt: 1_700_000_000_000,
  personId: "p1",
  startedAt: 1_700_000_000_000,
  duration_ms: 41_000,
  profileId: "three-wheel",
  exercise: "open",
  combination: [38, 71, 26],
  help: "silent",
  opened: false,
  faults: [{ code: "ran-past", number: 2, size: 1.75 }],
  stops: [{ step: 2, turn: "right", number: 71, error: 1.75, amplitude: 267, time_ms: 9000 }],
  trace: SHORT_TRACE,
};

async function upgraded(attempts: readonly object[]): Promise<Logbook> {
  const host = emptyHost();
  (await rawDatabase(host, "old", 10, TABLES_1, { people: [PERSON_1], attempts })).close();
  const logbook = new Logbook(new LogbookDatabase("old", host));
  await logbook.open();
  expect(logbook.problem).toBeNull();
  return logbook;
}

/** Tables and indexes of version 2, as the browser has them. */
const TABLES_2 = {
  ...TABLES_1,
  attempts: [
    "personId",
    ["personId", "startedAt", "id"],
    ["personId", "profileId", "startedAt", "id"],
    ["personId", "missed", "startedAt", "id"],
    ["personId", "settingsKey"],
  ],
  traces: [],
  zeroings: ["personId", ["personId", "startedAt", "id"]],
  sittings: ["personId", ["personId", "startedAt", "id"]],
  settings: ["personId"],
  declarations: ["personId"],
};

describe("a logbook of version 2", () => {
  const { trace: _trace, ...rest } = ATTEMPT_1;
  const attempt = { ...rest, tags: ["old"], conditions: [] };
  const zeroing = { ...stamp("z1"), profileId: "dial-encoder", outcome: "zero-set", readings: [] };
  const rows = {
    people: [PERSON_1],
    attempts: [{ ...attempt, missed: 1, settingsKey: settingsKey({ ...attempt, help: "silent" }) }],
    traces: [{ id: "a1", bytes: SHORT_TRACE }],
    zeroings: [zeroing],
  };

  async function grown(): Promise<Logbook> {
    const host = emptyHost();
    (await rawDatabase(host, "old", 20, TABLES_2, rows)).close();
    const logbook = new Logbook(new LogbookDatabase("old", host));
    await logbook.open();
    expect(logbook.problem).toBeNull();
    return logbook;
  }

  test("keeps everything as it is", async () => {
    const logbook = await grown();
    expect(logbook.database?.verno).toBe(DATABASE_VERSION);
    expect(await allAttempts(logbook, { personId: "p1" })).toEqual([attempt]);
    expect(await motionOf(logbook, "a1")).toEqual(decodeTrace(SHORT_TRACE));
    expect(await logbook.database?.zeroings.toArray()).toEqual([zeroing]);
  });

  test("takes jobs, which it did not know, and deletes them with their person", async () => {
    const logbook = await grown();
    expect(await logbook.database?.jobs.count()).toBe(0);
    await logbook.save({ kind: "jobs", record: aJob("j1", { personId: "p1" }) });
    await logbook.save({ kind: "jobs", record: aJob("j2", { personId: "p2" }) });
    expect(await recordsOfKind(logbook, "jobs")).toHaveLength(2);
    await deletePerson(logbook, "p1", true);
    expect((await recordsOfKind(logbook, "jobs")).map(({ id }) => id)).toEqual(["j2"]);
  });
});

describe("a logbook of version 3", () => {
  const { trace: _trace, ...rest } = ATTEMPT_1;
  const row = (id: string, tags: readonly string[]) => {
    const attempt = { ...rest, id, tags: [...tags], conditions: [], help: "silent" as const };
    return { ...attempt, missed: 1, settingsKey: settingsKey(attempt) };
  };
  const change = { outcome: "true", proofs: 3, errors: null, faults: [] };
  const strictly = { personId: "p1", isRight: false, missed: ["number-set-off"] };
  const running = { ...stamp("s1"), title: "Friday", state: "running", body: {} };

  async function grown(): Promise<Logbook> {
    const host = emptyHost();
    const tables = { ...TABLES_2, jobs: ["personId", ["personId", "startedAt", "id"]] };
    const rows = {
      people: [PERSON_1],
      attempts: [row("a1", ["cold", "retake"]), row("a2", []), row("a3", ["retake"])],
      jobs: [
        aJob("mended", { ...strictly, details: change }),
        aJob("off", { ...strictly, details: { ...change, outcome: "off" } }),
      ],
      sittings: [running, { ...running, id: "s2", state: "finished", verdict: "passed" }],
    };
    (await rawDatabase(host, "old", 30, tables, rows)).close();
    const logbook = new Logbook(new LogbookDatabase("old", host));
    await logbook.open();
    expect(logbook.problem).toBeNull();
    return logbook;
  }

  test("finds attempts by tag and sittings under way, by indexes that it did not have", async () => {
    const logbook = await grown();
    const tagged = async (tag: string) => (await allAttempts(logbook, { personId: "p1", tag })).map(({ id }) => id);
    expect([await tagged("retake"), await tagged("cold"), await tagged("re")]).toEqual([["a1", "a3"], ["a1"], []]);
    expect(await tagsOfAttempts(logbook, "p1")).toEqual(["cold", "retake"]);
    expect((await runningSittings(logbook)).map(({ id }) => id)).toEqual(["s1"]);
    expect((await allAttempts(logbook, { personId: "p1" }))[0]).toEqual({
      ...rest,
      tags: ["cold", "retake"],
      conditions: [],
    });
  });

  test("has its jobs judged again, by the facts that are kept of them", async () => {
    const jobs = await recordsOfKind(await grown(), "jobs");
    expect(jobs.map(({ id, isRight, missed }) => [id, isRight, missed])).toEqual([
      ["mended", true, ["number-set-off"]],
      ["off", false, ["number-set-off"]],
    ]);
  });
});

describe("a logbook of version 1", () => {
  test("keeps its attempts, with tags and conditions that it did not know", async () => {
    const logbook = await upgraded([ATTEMPT_1]);
    const { trace: _trace, ...rest } = ATTEMPT_1;
    expect(await allAttempts(logbook, { personId: "p1" })).toEqual([{ ...rest, tags: [], conditions: [] }]);
    expect(logbook.database?.verno).toBe(DATABASE_VERSION);
  });

  test("can list its misses, by an index that it did not have", async () => {
    const logbook = await upgraded([ATTEMPT_1, { ...ATTEMPT_1, id: "a2", opened: true }]);
    const misses = await attemptPage(logbook, { personId: "p1", onlyMisses: true }, 10);
    expect(misses.attempts.map(({ id }) => id)).toEqual(["a1"]);
  });

  test("has its motions in a table of their own", async () => {
    const logbook = await upgraded([ATTEMPT_1]);
    expect(await motionOf(logbook, "a1")).toEqual(decodeTrace(SHORT_TRACE));
    expect(await logbook.database?.table("attempts").get("a1")).not.toHaveProperty("trace");
  });

  test("comes over whole when it is larger than one batch", async () => {
    const many = Array.from({ length: 1201 }, (_, i) => ({ ...ATTEMPT_1, id: `a${i}`, startedAt: 1e12 + i }));
    const logbook = await upgraded(many);
    expect(await countAttempts(logbook, { personId: "p1" })).toBe(1201);
    expect(await logbook.database?.traces.count()).toBe(1201);
  });

  test("keeps people, sheets and settings as they are", async () => {
    const logbook = await upgraded([]);
    expect(await logbook.database?.people.toArray()).toEqual([PERSON_1]);
    expect(await logbook.database?.declarations.count()).toBe(0);
    expect(await logbook.database?.jobs.count()).toBe(0);
  });
});
