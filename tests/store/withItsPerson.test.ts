import { describe, expect, test, vi } from "vitest";
import { readLogbookFile, writeLogbookFile } from "../../src/records/file/logbookFile";
import { allAttempts } from "../../src/store/attemptQueries";
import { Logbook } from "../../src/store/logbook";
import { type DatabaseHost, LogbookDatabase } from "../../src/store/logbookDatabase";
import type { LogbookWrite } from "../../src/store/logbookWrite";
import { restoreOwners } from "../../src/store/orphans";
import { deletePerson, recordsOfKind, wholeLogbook } from "../../src/store/wholeLogbook";
import { anAttempt, aPerson, emptyHost, NOON, openLogbook, SHORT_TRACE } from "../support/logbookRecords";

/* A record is never without its person: two tabs are two logbooks on one database. */

const write = (id: string, other = {}): LogbookWrite => ({
  kind: "attempts",
  record: anAttempt(id, other),
  trace: SHORT_TRACE,
});
const named = (id: string): LogbookWrite => ({ kind: "people", record: aPerson(id, { name: "Tavro" }) });
const names = async (logbook: Logbook) => (await recordsOfKind(logbook, "people")).map(({ name }) => name);

/** What an export holds, read as an import reads it. */
const exported = async (logbook: Logbook) => readLogbookFile(writeLogbookFile(await wholeLogbook(logbook), NOON));

async function twoTabs(): Promise<readonly [Logbook, Logbook, DatabaseHost]> {
  const host = emptyHost();
  return [await openLogbook(host), await openLogbook(host), host];
}

test("a person whom another tab stores while it is asked whose records are orphans keeps the name", async () => {
  const [here, there] = await twoTabs();
  const people = here.database?.people;
  if (people === undefined) throw new Error("the database is not open");
  const asked = vi.spyOn(people, "toCollection").mockImplementationOnce(
    () =>
      ({
        primaryKeys: async () => {
          const before = await people.toCollection().primaryKeys();
          await there.save(named("tavro"), write("a"));
          return before;
        },
      }) as unknown as ReturnType<typeof people.toCollection>,
  );
  await restoreOwners(here);
  expect(asked).toHaveBeenCalled();
  asked.mockRestore();
  expect(await names(here)).toEqual(["Tavro"]);
});

test("what is still taken down for somebody whom another stands in for goes to the one who is there", async () => {
  const [here, there] = await twoTabs();
  const first = aPerson("first", { name: "Trainee" });
  await there.save({ kind: "people", record: aPerson("other", { name: "Trainee" }), only: "if-nobody" });
  await here.save({ kind: "people", record: first, only: "if-nobody" }, write("a", { personId: "first" }));
  here.people.know([first]);
  await here.save(write("b", { personId: "first" }));
  expect((await recordsOfKind(here, "people")).map(({ id }) => id)).toEqual(["other"]);
  expect((await allAttempts(here, { personId: "other" })).map(({ id }) => id).sort()).toEqual(["a", "b"]);
});

describe("a person who was deleted in another tab", () => {
  test("comes back with the next record, by name, and that is said", async () => {
    const [here, there] = await twoTabs();
    await here.save(named("tavro"), write("a"));
    await deletePerson(there, "tavro", true);
    expect(await names(here)).toEqual([]);
    await here.save(write("b"));
    expect(await names(here)).toEqual(["Tavro"]);
    expect(here.restored.map(({ name }) => name)).toEqual(["Tavro"]);
    expect((await allAttempts(there, { personId: "tavro" })).map(({ id }) => id)).toEqual(["b"]);
    expect((await exported(there)).records.attempts).toHaveLength(1);
  });

  test("and whom this page never knew gets a name that says so", async () => {
    const logbook = await openLogbook();
    await logbook.save(write("a", { personId: "f00dcafe" }));
    expect(await names(logbook)).toEqual(["Unknown person f00dca"]);
  });

  test("stays deleted where this page deleted them", async () => {
    const logbook = await openLogbook();
    await logbook.save(named("tavro"), write("a"));
    await deletePerson(logbook, "tavro", true);
    expect(logbook.people.byId.has("tavro")).toBe(false);
    expect(await names(logbook)).toEqual([]);
  });
});

test("a database that is deleted under an open page is made anew, and the next record brings its person", async () => {
  const host = emptyHost();
  const logbook = await openLogbook(host);
  await logbook.save(named("tavro"), write("a"));
  await new Promise((resolve) => {
    host.indexedDB.deleteDatabase("test").onsuccess = resolve;
  });
  const saved = await logbook.save(write("b"));
  if (!saved.isStored) await logbook.retry();
  expect([logbook.problem, logbook.pending]).toEqual([null, []]);
  expect(await names(logbook)).toEqual(["Tavro"]);
  expect((await exported(logbook)).records.attempts.map(({ id }) => id)).toEqual(["b"]);
});

test("an export from a page that cannot reach its database holds the person of every record", async () => {
  const logbook = await openLogbook();
  await logbook.save(named("tavro"));
  logbook.close();
  await logbook.save(write("a"), write("b", { personId: "nobody" }));
  const { records } = await exported(logbook);
  expect(records.people.map(({ name }) => name).sort()).toEqual(["Tavro", "Unknown person nobody"]);
  expect(records.attempts).toHaveLength(2);
});

test("records that lost their person before are given one when the logbook opens", async () => {
  const [here, , host] = await twoTabs();
  await here.save(named("tavro"), write("a"));
  await here.change((database) => database.people.clear());
  const again = new Logbook(new LogbookDatabase("test", host));
  await again.open();
  expect(await names(again)).toEqual(["Unknown person tavro"]);
});

describe("the first person, whom nobody named", () => {
  const first = (id: string): LogbookWrite => ({
    kind: "people",
    record: aPerson(id, { name: "Trainee" }),
    only: "if-nobody",
  });

  test("is one, when two tabs begin at once", async () => {
    const [here, there] = await twoTabs();
    await Promise.all([
      here.save(first("p1"), write("a", { personId: "p1" })),
      there.save(first("p2"), write("b", { personId: "p2" })),
    ]);
    const people = await recordsOfKind(here, "people");
    expect(people.map(({ name }) => name)).toEqual(["Trainee"]);
    const personId = people[0]?.id ?? "";
    expect((await allAttempts(here, { personId })).map(({ id }) => id).sort()).toEqual(["a", "b"]);
    expect([here.people.personFor("p1"), there.people.personFor("p2")]).toEqual([personId, personId]);
  });

  test("is one, when both tabs waited for the database", async () => {
    const [here, there] = await twoTabs();
    for (const [tab, id] of [[here, "p1"] as const, [there, "p2"] as const]) {
      tab.close();
      await tab.save(first(id), write(`of ${id}`.replace(" ", "-"), { personId: id }));
      expect(await names(tab)).toEqual(["Trainee"]);
    }
    expect([await here.retry(), await there.retry()]).toEqual([0, 0]);
    expect(await names(here)).toEqual(["Trainee"]);
    expect(await allAttempts(there, { personId: there.people.personFor("p2") })).toHaveLength(2);
  });

  test("is made beside invented people", async () => {
    const logbook = await openLogbook();
    await logbook.save({ kind: "people", record: aPerson("ondrell", { isDemo: true }) });
    await logbook.save(first("p1"), write("a", { personId: "p1" }));
    expect((await names(logbook)).sort()).toEqual(["Trainee", "ondrell"]);
  });
});
