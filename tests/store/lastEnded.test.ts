import { describe, expect, test } from "vitest";
import { lastEnded } from "../../src/store/outbox/lastEnded";
import { aJob, anAttempt, NOON, openLogbook } from "../support/logbookRecords";

const attempt = (id: string, at: number, other = {}) => ({
  kind: "attempts" as const,
  record: anAttempt(id, { startedAt: NOON + at, duration_ms: 5, ...other }),
});
const job = (id: string, at: number, isRight: boolean) => ({
  kind: "jobs" as const,
  record: aJob(id, { startedAt: NOON + at, duration_ms: 5, isRight, missed: [] }),
});

describe("the last result of a person", () => {
  test.each([
    { name: "nothing", writes: [], last: null },
    {
      name: "the later of two attempts",
      writes: [attempt("a", 10, { opened: false }), attempt("b", 0)],
      last: [false, 15],
    },
    {
      name: "no attempt under way",
      writes: [attempt("a", 0), attempt("b", 10, { isUnfinished: true })],
      last: [true, 5],
    },
    { name: "no try that came too late as right", writes: [attempt("a", 0, { isLate: true })], last: [false, 5] },
    { name: "a job that ended later", writes: [attempt("a", 0), job("j", 10, true)], last: [true, 15] },
    { name: "nobody else's", writes: [attempt("a", 0), attempt("b", 10, { personId: "zzz" })], last: [true, 5] },
  ])("is $name", async ({ writes, last }) => {
    const logbook = await openLogbook();
    await logbook.save(...writes);
    const ended = await lastEnded(logbook, "tavro");
    expect(ended && [ended.isRight, ended.endedAt - NOON]).toEqual(last);
  });
});
