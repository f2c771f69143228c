import { beforeEach, describe, expect, test } from "vitest";
import { NO_CONTENTS } from "../../src/records/logbookContents";
import type { SittingRecord } from "../../src/records/records";
import { standingOf } from "../../src/records/sittingStanding";
import type { Logbook } from "../../src/store/logbook";
import { runningAmong, runningSittings, sittingById, sittingPage } from "../../src/store/sittingQueries";
import { mergeIntoLogbook } from "../../src/store/wholeLogbook";
import { aPerson, NOON, openLogbook } from "../support/logbookRecords";

const aSitting = (id: string, minute: number, other: Partial<SittingRecord> = {}): SittingRecord => ({
  id,
  createdAt: NOON,
  updatedAt: NOON,
  personId: "tavro",
  startedAt: NOON + 60_000 * minute,
  title: "Friday sitting",
  state: "finished",
  verdict: "passed",
  body: {},
  ...other,
});

const SITTINGS = [
  aSitting("a", 1),
  aSitting("b", 2, { verdict: "failed", tags: ["Retake"] }),
  aSitting("c", 2, { state: "broken-off", verdict: "failed", note: "Fire drill" }),
  aSitting("d", 3, { state: "running", verdict: undefined, title: "Round and round" }),
  aSitting("e", 4, { personId: "mibsy", state: "running", verdict: undefined }),
];

let logbook: Logbook;
beforeEach(async () => {
  logbook = await openLogbook();
  await logbook.save(...SITTINGS.map((record) => ({ kind: "sittings" as const, record })));
});

const idsOf = async (filter: object) =>
  (await sittingPage(logbook, { personId: "tavro", ...filter }, 10)).sittings.map(({ id }) => id);

describe("the sittings of a person", () => {
  test("come latest first, and of that person alone", async () => {
    expect(await idsOf({})).toEqual(["d", "c", "b", "a"]);
  });

  test.each([
    [{ standing: "passed" }, ["a"]],
    [{ standing: "failed" }, ["b"]],
    [{ standing: "broken-off" }, ["c"]],
    [{ standing: "running" }, ["d"]],
    [{ words: " ROUND " }, ["d"]],
    [{ words: "retake" }, ["b"]],
    [{ words: "fire" }, ["c"]],
    [{ words: "friday", standing: "running" }, []],
  ])("by %o", async (filter, ids) => {
    expect(await idsOf(filter)).toEqual(ids);
  });

  test("come in pages that neither skip nor repeat, those of one moment too", async () => {
    const seen: string[] = [];
    let before: Parameters<typeof sittingPage>[3];
    for (let pages = 0; pages < 9; pages++) {
      const page = await sittingPage(logbook, { personId: "tavro" }, 1, before);
      seen.push(...page.sittings.map(({ id }) => id));
      if (page.next === null) break;
      before = page.next;
    }
    expect(seen).toEqual(["d", "c", "b", "a"]);
  });

  test("take in what waits to be stored, each once", async () => {
    logbook.close();
    const changed = aSitting("a", 1, { updatedAt: NOON + 1, note: "seen by the instructor" });
    await logbook.save({ kind: "sittings", record: changed });
    expect(await idsOf({ words: "seen by" })).toEqual(["a"]);
    await logbook.retry();
    expect(await idsOf({ words: "seen by" })).toEqual(["a"]);
    expect(await sittingById(logbook, "a")).toMatchObject(changed);
  });
});

test("a broken-off sitting stands as that, whatever its marks say", () => {
  expect(SITTINGS.map(standingOf)).toEqual(["passed", "failed", "broken-off", "running", "running"]);
});

test("what has not ended is found, whoever's it is", async () => {
  expect((await runningSittings(logbook)).map(({ id }) => id)).toEqual(["e", "d"]);
  expect(await runningAmong(logbook, new Set(["a", "d", "nobody's"]))).toEqual(new Set(["d"]));
});

test("a sitting that ran when its file was saved is broken off where the file is taken in, and keeps its end here", async () => {
  const other = await openLogbook();
  const file = { ...NO_CONTENTS, records: { ...NO_CONTENTS.records, people: [aPerson("tavro")], sittings: SITTINGS } };
  await mergeIntoLogbook(other, file);
  expect((await sittingById(other, "d"))?.state).toBe("broken-off");
  await mergeIntoLogbook(logbook, file);
  expect((await sittingById(logbook, "d"))?.state).toBe("running");
});
