import { expect, test } from "vitest";
import { readLogbookFile } from "../../src/records/file/logbookFile";
import { allAttempts, motionOf } from "../../src/store/attemptQueries";
import { tagsOfAttempts } from "../../src/store/attemptTags";
import { Logbook } from "../../src/store/logbook";
import { DATABASE_VERSION, LogbookDatabase } from "../../src/store/logbookDatabase";
import { runningSittings } from "../../src/store/sittingQueries";
import { mergeIntoLogbook, recordsOfKind, wholeLogbook } from "../../src/store/wholeLogbook";
import file from "../fixtures/0.2.0/logbook-demo.json" with { type: "json" };
import { rows4, TABLES_4 } from "../support/database4";
import { emptyHost, NOON, openLogbook } from "../support/logbookRecords";
import { rawDatabase } from "../support/rawDatabase";

/*
 * Both files were written by release 0.2.0, whose database was of version 4, from one logbook: two people of the demo, an
 * attempt with tags and a note, a sitting under way, a sheet.
 */

async function grown(): Promise<Logbook> {
  const host = emptyHost();
  (await rawDatabase(host, "old", 40, TABLES_4, rows4())).close();
  const logbook = new Logbook(new LogbookDatabase("old", host));
  await logbook.open();
  expect(logbook.problem).toBeNull();
  return logbook;
}

test("a database of version 4 is taken over whole, with its motions, tags and the sitting under way", async () => {
  const logbook = await grown();
  expect(logbook.database?.verno).toBe(DATABASE_VERSION);
  const { records, traces } = await wholeLogbook(logbook);
  const counts = Object.fromEntries(Object.entries(records).map(([kind, list]) => [kind, list.length]));
  expect(counts).toMatchObject({ people: 2, attempts: 4, jobs: 3, sittings: 1, sheets: 1 });
  expect(traces.size).toBe(4);
  const noted = records.attempts.find(({ note }) => note === "first of the day");
  expect(await tagsOfAttempts(logbook, noted?.personId ?? "")).toEqual(["cold", "demo", "retake"]);
  expect((await motionOf(logbook, noted?.id ?? ""))?.positions.length).toBeGreaterThan(10);
  expect((await runningSittings(logbook)).map(({ id }) => id)).toEqual(["s1"]);
});

test("a database of version 4 keeps a handover under way from now on", async () => {
  const logbook = await grown();
  const stamp = { id: "h", createdAt: NOON, updatedAt: NOON, startedAt: NOON };
  const personId = (await recordsOfKind(logbook, "people"))[0]?.id ?? "";
  const saved = { kind: "handoverRuns", record: { ...stamp, personId, isRunning: true, body: "steps" } } as const;
  expect(await logbook.save(saved)).toMatchObject({ isStored: true });
  expect(await recordsOfKind(logbook, "handoverRuns")).toMatchObject([{ id: "h", isRunning: true, body: "steps" }]);
});

test("a file of release 0.2.0 is taken in whole, and changes nothing beside the database it came from", async () => {
  const read = readLogbookFile(JSON.stringify(file));
  const empty = await openLogbook();
  await mergeIntoLogbook(empty, read);
  const person = read.records.attempts[0]?.personId ?? "";
  expect(await allAttempts(empty, { personId: person })).toHaveLength(4);
  const logbook = await grown();
  const before = await wholeLogbook(logbook);
  expect(await mergeIntoLogbook(logbook, read)).toMatchObject({ added: 0, updated: 0 });
  expect(await wholeLogbook(logbook)).toEqual(before);
});
