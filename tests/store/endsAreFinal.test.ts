import { expect, test } from "vitest";
import type { LogbookWrite } from "../../src/store/logbookWrite";
import { recordsOfKind, wholeLogbook } from "../../src/store/wholeLogbook";
import { anAttempt, NOON, openLogbook, SHORT_TRACE } from "../support/logbookRecords";

/* What has ended stays ended, whoever writes late and whatever the clock says. */

const own = { createdAt: NOON, personId: "tavro", startedAt: NOON };
const sitting = { ...own, id: "x", title: "Friday", body: {} };
const zeroing = { ...own, id: "x", profileId: "dial-encoder", readings: [] };
const handover = { ...own, id: "x", body: "steps" };

const PAIRS: readonly (readonly [string, LogbookWrite, LogbookWrite])[] = [
  [
    "an attempt",
    { kind: "attempts", record: anAttempt("x"), trace: SHORT_TRACE },
    { kind: "attempts", record: anAttempt("x", { isUnfinished: true, opened: false, updatedAt: NOON + 9 }) },
  ],
  [
    "a zeroing",
    { kind: "zeroings", record: { ...zeroing, updatedAt: NOON, outcome: "zero-set" } },
    { kind: "zeroings", record: { ...zeroing, updatedAt: NOON + 9, outcome: "broken-off" } },
  ],
  [
    "a sitting",
    { kind: "sittings", record: { ...sitting, updatedAt: NOON, state: "finished", verdict: "failed" } },
    { kind: "sittings", record: { ...sitting, updatedAt: NOON + 9, state: "running" } },
  ],
  [
    "a handover",
    { kind: "handoverRuns", record: { ...handover, updatedAt: NOON, isRunning: false } },
    { kind: "handoverRuns", record: { ...handover, updatedAt: NOON + 9, isRunning: true } },
  ],
];

test.each(PAIRS)("%s that has ended is not under way again, stored, waiting or both", async (_what, ended, going) => {
  const logbook = await openLogbook();
  await logbook.save(ended);
  const [before] = (await wholeLogbook(logbook)).records[ended.kind];
  await logbook.save(going);
  logbook.close();
  await logbook.save(going);
  await logbook.retry();
  expect((await wholeLogbook(logbook)).records[ended.kind]).toEqual([before]);
  logbook.close();
  const other = await openLogbook();
  other.close();
  await other.save(ended);
  await other.save(going);
  await other.retry();
  expect((await wholeLogbook(other)).records[ended.kind]).toMatchObject([ended.record]);
});

test.each(PAIRS)(
  "%s under way is ended by its end, though the clock was set back an hour",
  async (_what, ended, going) => {
    const logbook = await openLogbook();
    const early = { ...ended, record: { ...ended.record, updatedAt: NOON - 3_600_000 } } as LogbookWrite;
    await logbook.save(going);
    await logbook.save(early);
    expect(await recordsOfKind(logbook, "people")).toHaveLength(1);
    expect((await wholeLogbook(logbook)).records[ended.kind]).toMatchObject([early.record]);
  },
);
