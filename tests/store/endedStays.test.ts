import { expect, test } from "vitest";
import type { SittingRecord } from "../../src/records/records";
import { attemptOf } from "../../src/store/logbookDatabase";
import type { LogbookWrite } from "../../src/store/logbookWrite";
import { anAttempt, NOON, openLogbook } from "../support/logbookRecords";

const sitting = (fields: Partial<SittingRecord>, later_ms = 0): LogbookWrite => ({
  kind: "sittings",
  record: {
    id: "s",
    createdAt: NOON,
    updatedAt: NOON + later_ms,
    personId: "tavro",
    startedAt: NOON,
    title: "A sheet",
    state: "running",
    body: { later_ms },
    ...fields,
  },
});

const attempt = (fields: Parameters<typeof anAttempt>[1], later_ms = 0): LogbookWrite => ({
  kind: "attempts",
  record: anAttempt("s:1", { sittingId: "s", updatedAt: NOON + later_ms, ...fields }),
});

const FAILED = { state: "finished", verdict: "failed" } as const;

/** Saves one group of writes after another, and gives what the tables have then. */
async function savedIn(...groups: readonly (readonly LogbookWrite[])[]) {
  const logbook = await openLogbook();
  let ended: ReadonlySet<string> = new Set();
  for (const group of groups) {
    const saved = await logbook.save(...group);
    if (saved.isStored) ended = saved.ended;
  }
  return {
    ended: [...ended],
    pending: logbook.pending.length,
    sittings: await logbook.read((database) => database.sittings.toArray(), []),
    attempts: (await logbook.read((database) => database.attempts.toArray(), [])).map(attemptOf),
  };
}

test("a running record of a later time does not take the place of a finished one, nor do its tries", async () => {
  const missed = attempt({ opened: false });
  const found = await savedIn(
    [sitting({}), missed],
    [sitting(FAILED, 1000)],
    [sitting({}, 9000), attempt({ opened: true }, 9000)],
  );
  expect(found.sittings).toMatchObject([{ ...FAILED, body: { later_ms: 1000 } }]);
  expect(found.attempts).toMatchObject([missed.record]);
  expect(found).toMatchObject({ ended: ["s"], pending: 0 });
});

test("a try that goes on is not added to a sitting that has ended, one that ended before is", async () => {
  const late = await savedIn([sitting(FAILED)], [attempt({ isUnfinished: true }, 9000)]);
  expect(late).toMatchObject({ attempts: [], ended: ["s"] });
  const missing = await savedIn([sitting(FAILED)], [attempt({}, 9000)]);
  expect(missing).toMatchObject({ attempts: [{ id: "s:1" }], ended: [] });
});

test("an attempt that has ended is not made unfinished again", async () => {
  const found = await savedIn([sitting({})], [attempt({ opened: false })], [attempt({ isUnfinished: true }, 9000)]);
  expect(found.attempts).toMatchObject([{ opened: false }]);
  expect(found.attempts[0]?.isUnfinished).toBeUndefined();
});

test("a sitting that failed is not written over by one that passed or was broken off; a note of it is taken", async () => {
  const otherwise = await savedIn(
    [sitting(FAILED)],
    [sitting({ state: "finished", verdict: "passed" }, 9000)],
    [sitting({ state: "broken-off", verdict: "not shown yet" }, 9500)],
  );
  expect(otherwise.sittings).toMatchObject([FAILED]);
  const noted = await savedIn([sitting(FAILED)], [sitting({ ...FAILED, note: "seen" }, 9000)]);
  expect(noted.sittings).toMatchObject([{ ...FAILED, note: "seen" }]);
});

test("what waits for its storage is not revived either", async () => {
  const logbook = await openLogbook();
  logbook.close();
  await logbook.save(sitting(FAILED));
  await logbook.save(sitting({}, 9000));
  expect(logbook.pending.map(({ record }) => record)).toMatchObject([FAILED]);
});

test("a running sitting goes on, and ends", async () => {
  const found = await savedIn([sitting({})], [sitting({}, 500), attempt({}, 500)], [sitting(FAILED, 1000)]);
  expect(found.sittings).toMatchObject([FAILED]);
  expect(found.attempts).toHaveLength(1);
  expect(found.ended).toEqual([]);
});
