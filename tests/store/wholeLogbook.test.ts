import { describe, expect, test } from "vitest";
import { demoLogbook } from "../../src/progress/demo/demoLogbook";
import { describeSource } from "../../src/realdial/sources/sourceDescription";
import { contentsOf } from "../../src/records/logbookContents";
import { countAttempts } from "../../src/store/attemptQueries";
import { deletePerson, mergeIntoLogbook, removeDemo, wholeLogbook } from "../../src/store/wholeLogbook";
import { aJob, anAttempt, contents, NOON, openLogbook, SHORT_TRACE, theirPeople } from "../support/logbookRecords";

const TRIES = [anAttempt("a"), anAttempt("b"), anAttempt("c", { personId: "mibsy" })];

test("a file brings no motion of an attempt of which none is kept, and takes away the one that was there", async () => {
  const logbook = await openLogbook();
  await mergeIntoLogbook(logbook, contents(theirPeople, TRIES));
  const sources = [describeSource("ordinary-dial", 0.06, null, false)];
  const later = TRIES.map((one) => ({ ...one, updatedAt: one.updatedAt + 1 }));
  await mergeIntoLogbook(
    logbook,
    contents([], [{ ...(later[0] ?? anAttempt("a")), sources }, anAttempt("d", { sources })]),
  );
  const { traces } = await wholeLogbook(logbook);
  expect([...traces.keys()].sort()).toEqual(["b", "c"]);
});

describe("deleting a person", () => {
  test("leaves nothing of theirs in any table of the database", async () => {
    const logbook = await openLogbook();
    await mergeIntoLogbook(logbook, contents(theirPeople, TRIES));
    const own = { createdAt: NOON, updatedAt: NOON, personId: "tavro", startedAt: NOON };
    const skill = { profileId: "three-wheel", exercise: "open" };
    await logbook.save(
      { kind: "zeroings", record: { ...own, id: "z", profileId: "dial-encoder", outcome: "zero-set", readings: [] } },
      { kind: "sittings", record: { ...own, id: "s", title: "Friday", state: "finished", body: {} } },
      { kind: "declarations", record: { ...own, ...skill, id: "d", declaredAt: NOON, attempts: 12 } },
      { kind: "jobs", record: aJob("j", { personId: own.personId }) },
      { kind: "handoverRuns", record: { ...own, id: "r", isRunning: true, body: {} } },
    );
    await deletePerson(logbook, "tavro", true);
    const tables = logbook.database?.tables ?? [];
    const rows = await Promise.all(
      tables.map(async (table) => [table.name, (await table.toCollection().primaryKeys()).sort()]),
    );
    expect(Object.fromEntries(rows)).toEqual({
      people: ["dorvik", "mibsy"],
      attempts: ["c"],
      traces: ["c"],
      zeroings: [],
      jobs: [],
      sittings: [],
      sheets: [],
      settings: [],
      declarations: [],
      handoverRuns: [],
      outbox: [],
      joinings: [],
    });
  });

  test("takes everything of theirs, and nothing of anybody else", async () => {
    const logbook = await openLogbook();
    await mergeIntoLogbook(logbook, contents(theirPeople, TRIES));
    const stamp = { createdAt: NOON, updatedAt: NOON };
    await logbook.save({ kind: "settings", record: { id: "s1", ...stamp, personId: "tavro", value: 1 } });
    await logbook.save({ kind: "settings", record: { id: "s2", ...stamp, value: 2 } });
    const mibsy = contentsOf(new Set(["mibsy"]), await wholeLogbook(logbook));
    await deletePerson(logbook, "tavro", true);
    const left = await wholeLogbook(logbook);
    expect(left.records.people.map(({ id }) => id).sort()).toEqual(["dorvik", "mibsy"]);
    expect([...left.traces.keys()]).toEqual(["c"]);
    expect(left.records.settings.map(({ id }) => id)).toEqual(["s2"]);
    expect(contentsOf(new Set(["mibsy"]), left)).toEqual(mibsy);
  });

  test("is refused before an export was offered", async () => {
    const logbook = await openLogbook();
    await mergeIntoLogbook(logbook, contents(theirPeople, TRIES));
    await expect(deletePerson(logbook, "tavro", false)).rejects.toMatchObject({ code: "export-not-offered" });
    expect(await countAttempts(logbook, { personId: "tavro" })).toBe(2);
  });

  test("that fails in the middle takes nothing", async () => {
    const logbook = await openLogbook();
    await mergeIntoLogbook(logbook, contents(theirPeople, TRIES));
    const before = await wholeLogbook(logbook);
    const { database } = logbook;
    if (database === null) throw new Error("not open");
    database.people.bulkDelete = () => Promise.reject(new DOMException("no", "UnknownError")) as never;
    await expect(deletePerson(logbook, "tavro", true)).rejects.toMatchObject({ code: "storage-failed" });
    expect(await wholeLogbook(logbook)).toEqual(before);
  });
});

test("part of a logbook is what belongs to some people, their traces, and the sheets", () => {
  const part = contentsOf(new Set(["mibsy"]), contents(theirPeople, TRIES));
  expect(part.records.people.map(({ id }) => id)).toEqual(["mibsy"]);
  expect(part.records.attempts.map(({ id }) => id)).toEqual(["c"]);
  expect(part.traces).toEqual(new Map([["c", SHORT_TRACE]]));
});

test("the demo is loaded once however often it is asked for, and goes as a whole", { timeout: 60_000 }, async () => {
  const logbook = await openLogbook();
  await mergeIntoLogbook(logbook, contents(theirPeople, TRIES));
  const before = await wholeLogbook(logbook);
  const demo = demoLogbook(7, NOON);
  const first = await mergeIntoLogbook(logbook, demo);
  expect(first.added).toBeGreaterThan(240);
  expect(await mergeIntoLogbook(logbook, demo)).toMatchObject({ added: 0, updated: 0 });
  expect(await removeDemo(logbook)).toBe(7);
  expect(await wholeLogbook(logbook)).toEqual(before);
});
