import { expect, test } from "vitest";
import { jobPage } from "../../src/store/jobQueries";
import { Logbook } from "../../src/store/logbook";
import { LogbookDatabase } from "../../src/store/logbookDatabase";
import { aJob, NOON } from "../support/logbookRecords";

test("jobs that wait in the tab come in pages too", async () => {
  const logbook = new Logbook(new LogbookDatabase("no database here"));
  await logbook.open();
  const jobs = ["a", "b", "c"].map((id, k) => aJob(id, { startedAt: NOON + k }));
  await logbook.save(...jobs.map((record) => ({ kind: "jobs" as const, record })));
  expect(logbook.pending).toHaveLength(3);
  const first = await jobPage(logbook, { personId: "tavro" }, { size: 2 });
  expect(first.records.map(({ id }) => id)).toEqual(["c", "b"]);
  const rest = await jobPage(logbook, { personId: "tavro" }, { size: 2, before: first.next ?? undefined });
  expect(rest).toMatchObject({ records: [{ id: "a" }], next: null });
  expect((await jobPage(logbook, { personId: "mibsy" }, { size: 2 })).records).toEqual([]);
});
