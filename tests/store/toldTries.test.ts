import { expect, test } from "vitest";
import type { SittingRecord, ZeroingRecord } from "../../src/records/records";
import { attemptPage, countAttempts } from "../../src/store/attemptQueries";
import { jobPage } from "../../src/store/jobQueries";
import type { Logbook } from "../../src/store/logbook";
import { toldAttempts, toldJobs, toldZeroings, untoldSittings } from "../../src/store/toldTries";
import { aJob, anAttempt, NOON, openLogbook } from "../support/logbookRecords";

const ME = "tavro";
const stamp = { createdAt: NOON, updatedAt: NOON, personId: ME, startedAt: NOON };

const sitting = (id: string, other: Partial<SittingRecord> = {}): SittingRecord => ({
  ...stamp,
  id,
  title: "Friday sitting",
  state: "running",
  body: {},
  ...other,
});

const zeroing = (id: string, sittingId?: string): ZeroingRecord => ({
  ...stamp,
  id,
  profileId: "dial-encoder",
  outcome: "not-set",
  readings: [],
  ...(sittingId !== undefined && { details: { sittingId } }),
});

/** A person with a try of each kind at the bench, in a sitting that has ended, and in one under way. */
async function practiced(): Promise<Logbook> {
  const logbook = await openLogbook();
  await logbook.save(
    ...[
      sitting("now"),
      sitting("past", { state: "finished", verdict: "passed" }),
      sitting("theirs", { personId: "mibsy" }),
    ].map((record) => ({ kind: "sittings" as const, record })),
    ...["bench", "past", "now"].flatMap((where, k) => {
      const of = where === "bench" ? {} : { sittingId: where };
      const at = { startedAt: NOON + k };
      return [
        { kind: "attempts" as const, record: anAttempt(`attempt-${where}`, { ...of, ...at, opened: false }) },
        {
          kind: "jobs" as const,
          record: aJob(`job-${where}`, { ...of, ...at, isRight: false, missed: ["not-proved"] }),
        },
        { kind: "zeroings" as const, record: zeroing(`zero-${where}`, of.sittingId) },
      ];
    }),
  );
  return logbook;
}

async function told(logbook: Logbook): Promise<readonly string[]> {
  const found = [
    await toldAttempts(logbook, { personId: ME }),
    await toldJobs(logbook, ME),
    (await toldZeroings(logbook, ME)).toSorted((a, b) => (a.id < b.id ? -1 : 1)),
  ];
  return found.flat().map(({ id }) => id);
}

test("tries of a sitting under way are left out, and count when it has ended", async () => {
  const logbook = await practiced();
  expect(await untoldSittings(logbook, ME)).toEqual(["now"]);
  const before = ["attempt-bench", "attempt-past", "job-bench", "job-past", "zero-bench", "zero-past"];
  expect(await told(logbook)).toEqual(before);
  const record = sitting("now", { state: "finished", verdict: "failed", updatedAt: NOON + 9 });
  await logbook.save({ kind: "sittings", record });
  expect(await untoldSittings(logbook, ME)).toEqual([]);
  expect((await told(logbook)).toSorted()).toEqual([...before, "attempt-now", "job-now", "zero-now"].toSorted());
});

test("lists of misses can leave them out as well, page by page", async () => {
  const logbook = await practiced();
  const filter = { personId: ME, onlyMisses: true, notOf: await untoldSittings(logbook, ME) };
  const { attempts } = await attemptPage(logbook, filter, 10);
  expect(attempts.map(({ id }) => id)).toEqual(["attempt-past", "attempt-bench"]);
  expect(await countAttempts(logbook, filter)).toBe(2);
  expect((await jobPage(logbook, filter, { size: 10 })).records.map(({ id }) => id)).toEqual(["job-past", "job-bench"]);
});
