import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { currentLogbook } from "../../../src/app/keeping/currentLogbook";
import { keepJob, keepMissing } from "../../../src/app/keeping/keep";
import { noteRecord } from "../../../src/app/logbook/notes/notes";
import type { JobNote } from "../../../src/records/job/jobNote";
import { jobPage } from "../../../src/store/jobQueries";
import { storageError } from "../../../src/store/storageProblem";
import { recordsOfKind } from "../../../src/store/wholeLogbook";
import { aJob, emptyHost, NOON } from "../../support/logbookRecords";

beforeAll(() => {
  for (const [name, value] of Object.entries(emptyHost())) vi.stubGlobal(name, value);
});
afterAll(() => vi.unstubAllGlobals());

const noteOf = (id: string, other: Partial<JobNote> = {}): JobNote => {
  const { personId: _, ...note } = aJob(id, other);
  return note;
};

test("jobs are kept for whoever practices, with what was noted of them, until they show the skill", async () => {
  const { logbook } = await currentLogbook();
  const shown = async () => recordsOfKind(logbook, "declarations");
  for (let k = 0; k < 11; k++) await keepJob(noteOf(`job${k}`, { startedAt: NOON + k }));
  expect(await shown()).toEqual([]);
  await keepJob(noteOf("trouble", { kind: "trouble", startedAt: NOON + 50, isRight: false, missed: ["size"] }));
  await keepJob(noteOf("job11", { startedAt: NOON + 20 }));
  const [person] = await recordsOfKind(logbook, "people");
  expect(await shown()).toMatchObject([
    { personId: person?.id, profileId: "three-wheel", exercise: "change", attempts: 12, declaredAt: NOON + 20 },
  ]);

  const [job] = (await jobPage(logbook, { personId: person?.id ?? "" }, { size: 1 })).records;
  expect(job).toMatchObject({ id: "trouble", personId: person?.id });
  if (job === undefined) throw new Error("it was kept");
  await noteRecord(logbook, "jobs", job, { tags: "retake", note: "cold hands" }, NOON + 60);
  await keepJob(noteOf("trouble", { kind: "trouble", startedAt: NOON + 50, updatedAt: NOON + 70, missed: ["size"] }));
  const asked = { personId: job.personId, onlyMisses: false, kind: "trouble", profileId: "three-wheel" } as const;
  expect((await jobPage(logbook, asked, { size: 5 })).records).toMatchObject([
    { tags: ["retake"], note: "cold hands", updatedAt: NOON + 70 },
  ]);
});

test("a page holds what was asked for, latest first, and the next one goes on", async () => {
  const { logbook } = await currentLogbook();
  const jobs = ["a", "b", "c", "d"].map((id, k) =>
    aJob(id, {
      personId: "mibsy",
      startedAt: NOON + k,
      isRight: id !== "b",
      profileId: id === "d" ? "two-wheel" : "three-wheel",
    }),
  );
  await logbook.save(...jobs.map((record) => ({ kind: "jobs" as const, record })));
  const ids = async (filter: object, before?: { startedAt: number; id: string }) => {
    const page = await jobPage(logbook, { personId: "mibsy", ...filter }, { size: 2, before });
    return [page.records.map(({ id }) => id).join(""), page.next?.id ?? null];
  };
  expect(await ids({})).toEqual(["dc", "c"]);
  expect(await ids({}, { startedAt: NOON + 2, id: "c" })).toEqual(["ba", null]);
  expect(await ids({ onlyMisses: true })).toEqual(["b", null]);
  expect(await ids({ profileId: "two-wheel" })).toEqual(["d", null]);
  expect(await ids({ kind: "handover" })).toEqual(["", null]);
});

test("a job of a sitting that is on record is not kept a second time", async () => {
  const { logbook } = await currentLogbook();
  const write = (isRight: boolean) => (personId: string) => [
    { kind: "jobs" as const, record: aJob("sitting:1", { personId, isRight, updatedAt: NOON + (isRight ? 0 : 9) }) },
  ];
  await keepMissing("tavro", write(true));
  await keepMissing("tavro", write(false));
  const found = (await recordsOfKind(logbook, "jobs")).filter(({ id }) => id === "sitting:1");
  expect(found.map(({ isRight }) => isRight)).toEqual([true]);
});

test("a record is not lost where the database cannot be asked whose it is", async () => {
  const current = await currentLogbook();
  const { logbook } = current;
  current.choose(null);
  const failing = vi.spyOn(logbook, "read").mockRejectedValue(storageError("storage-failed", []));
  await keepJob(noteOf("unasked")).catch(() => undefined);
  failing.mockRestore();
  expect((await recordsOfKind(logbook, "jobs")).find(({ id }) => id === "unasked")).toBeDefined();
});
