import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { describeSource } from "../../src/realdial/sources/sourceDescription";
import { decodeTrace } from "../../src/records/motion/traceCodec";
import { RecordError } from "../../src/records/recordError";
import { askToPersist } from "../../src/store/askToPersist";
import { attemptPage, countAttempts, motionOf } from "../../src/store/attemptQueries";
import { installedVersion } from "../../src/store/installedVersion";
import { Logbook } from "../../src/store/logbook";
import { DATABASE_VERSION, type DatabaseHost, LogbookDatabase } from "../../src/store/logbookDatabase";
import { recordsOfKind } from "../../src/store/wholeLogbook";
import { anAttempt, aPerson, emptyHost, openLogbook, SHORT_TRACE } from "../support/logbookRecords";
import { rawDatabase } from "../support/rawDatabase";

const write = (id: string, other = {}) => ({
  kind: "attempts" as const,
  record: anAttempt(id, other),
  trace: SHORT_TRACE,
});
/** A version later than ours, as the browser counts. */
const NEWER = 10 * (DATABASE_VERSION + 1);
const everyone = { personId: "tavro" };
const code = (logbook: Logbook) => logbook.problem?.code ?? null;

// Dexie tells the console of what we tell the user.
beforeEach(() => void vi.spyOn(console, "warn").mockImplementation(() => {}));
afterEach(() => vi.restoreAllMocks());

async function openIn(host: DatabaseHost): Promise<Logbook> {
  const logbook = new Logbook(new LogbookDatabase("test", host));
  await logbook.open();
  return logbook;
}

/** Practice goes on without a database: kept, seen, and told. */
async function expectPracticeGoesOn(logbook: Logbook) {
  const saved = await logbook.save(write("new"));
  expect(saved).toMatchObject({ isStored: false, problem: { message: expect.stringMatching(/\.$/) } });
  expect((await attemptPage(logbook, everyone, 10)).attempts.map(({ id }) => id)).toContain("new");
  expect(await motionOf(logbook, "new")).toEqual(decodeTrace(SHORT_TRACE));
  expect(logbook.pending).toHaveLength(1);
}

describe("a database that cannot be opened", () => {
  test("is none at all", async () => {
    expect(globalThis.indexedDB).toBeUndefined();
    const logbook = new Logbook(new LogbookDatabase("test"));
    await logbook.open();
    expect(code(logbook)).toBe("unavailable");
    await expectPracticeGoesOn(logbook);
  });

  test("is closed to a private window, and opens later", async () => {
    const host = emptyHost();
    const open = vi.spyOn(host.indexedDB, "open").mockImplementation(() => {
      throw new DOMException(
        "A mutation operation was attempted on a database that did not allow it",
        "InvalidStateError",
      );
    });
    const logbook = await openIn(host);
    expect(code(logbook)).toBe("unavailable");
    await expectPracticeGoesOn(logbook);
    open.mockRestore();
    expect(await logbook.retry()).toBe(0);
    expect(code(logbook)).toBeNull();
    expect(await logbook.database?.attempts.count()).toBe(1);
  });

  test("is of a newer version: nothing in it is touched", async () => {
    const host = emptyHost();
    (await rawDatabase(host, "test", NEWER, { attempts: [] }, { attempts: [{ id: "theirs", shape: "new" }] })).close();
    const logbook = await openIn(host);
    expect(code(logbook)).toBe("newer-version");
    await expectPracticeGoesOn(logbook);
    expect(await logbook.retry()).toBe(1);
    const raw = await rawDatabase(host, "test", NEWER, {});
    expect([...raw.objectStoreNames]).toEqual(["attempts"]);
    expect(raw.version).toBe(NEWER);
    raw.close();
  });

  test("is blocked by another tab: what is saved meanwhile is stored once that tab is closed", async () => {
    const host = emptyHost();
    const otherTab = await rawDatabase(host, "test", 10, { people: [], attempts: ["personId"] });
    const logbook = await openIn(host);
    expect(code(logbook)).toBe("blocked");
    await expectPracticeGoesOn(logbook);
    otherTab.close();
    // The block clears first, and what waited is stored then.
    await vi.waitFor(() => expect(logbook.pending).toEqual([]));
    expect(code(logbook)).toBeNull();
    expect(await logbook.database?.attempts.count()).toBe(1);
  });
});

test("looking for a database makes none", async () => {
  const host = emptyHost();
  expect(await installedVersion(host, "test")).toBe(0);
  expect(await host.indexedDB.databases()).toEqual([]);
});

describe("an open database", () => {
  test("gives way to a newer version in another tab, and says so", async () => {
    const host = emptyHost();
    const logbook = await openIn(host);
    (await rawDatabase(host, "test", NEWER, {})).close();
    expect(code(logbook)).toBe("newer-version");
    await expectPracticeGoesOn(logbook);
  });

  test("that is full keeps nothing half: the record waits and is stored when there is room", async () => {
    const logbook = await openLogbook();
    const { database } = logbook;
    if (database === null) throw new Error("not open");
    const put = vi.spyOn(database.traces, "put").mockImplementation(() => {
      throw new DOMException("The quota has been exceeded.", "QuotaExceededError");
    });
    await expectPracticeGoesOn(logbook);
    expect(code(logbook)).toBe("quota-full");
    expect(await database.attempts.count()).toBe(0);
    put.mockRestore();
    expect(await logbook.retry()).toBe(0);
    expect(await countAttempts(logbook, everyone)).toBe(1);
    expect(code(logbook)).toBeNull();
  });

  test("counts and lists a pending change of a stored record once", async () => {
    const logbook = await openLogbook();
    await logbook.save(write("a"));
    logbook.close();
    await logbook.save(write("a", { updatedAt: anAttempt("a").updatedAt + 1, note: "better" }));
    expect((await attemptPage(logbook, everyone, 10)).attempts.map(({ note }) => note)).toEqual(["better"]);
    await logbook.retry();
    expect(await countAttempts(logbook, everyone)).toBe(1);
    expect((await attemptPage(logbook, everyone, 10)).attempts.map(({ note }) => note)).toEqual(["better"]);
  });

  test("keeps the motion of an attempt that is changed without it, stored or pending", async () => {
    const logbook = await openLogbook();
    const later = anAttempt("a", { updatedAt: anAttempt("a").updatedAt + 1, note: "well" });
    await logbook.save(write("a"));
    await logbook.save({ kind: "attempts", record: later });
    expect(await motionOf(logbook, "a")).toEqual(decodeTrace(SHORT_TRACE));
    logbook.close();
    await logbook.save(write("b"));
    await logbook.save({ kind: "attempts", record: { ...later, id: "b" } });
    expect(await motionOf(logbook, "b")).toEqual(decodeTrace(SHORT_TRACE));
    await logbook.retry();
    expect(await motionOf(logbook, "b")).toEqual(decodeTrace(SHORT_TRACE));
    expect((await attemptPage(logbook, everyone, 9)).attempts.map(({ note }) => note)).toEqual(["well", "well"]);
  });

  test("keeps what is saved last, though the clock was set back meanwhile", async () => {
    const logbook = await openLogbook();
    await logbook.save({ kind: "people", record: aPerson("tavro", { name: "First", updatedAt: 20 }) });
    await logbook.save({ kind: "people", record: aPerson("tavro", { name: "Then", updatedAt: 10 }) });
    expect(await recordsOfKind(logbook, "people")).toMatchObject([{ name: "Then", revision: 2 }]);
    logbook.close();
    await logbook.save({ kind: "people", record: aPerson("tavro", { name: "Waiting", updatedAt: 5 }) });
    await logbook.save({ kind: "people", record: aPerson("tavro", { name: "Last", updatedAt: 1 }) });
    await logbook.retry();
    expect(await recordsOfKind(logbook, "people")).toMatchObject([{ name: "Last", revision: 3 }]);
  });

  test.each([
    [
      "a name that is none",
      { kind: "people" as const, record: aPerson("x", { name: "" }) },
      "name must be a text of 1 to 100",
    ],
    ["an id with a slash", { kind: "people" as const, record: aPerson("a/b") }, "id must be an id"],
    ["a time before all times", write("a", { startedAt: -1 }), "startedAt must be a time"],
    ["a stop that is none", write("a", { stops: [{ step: 0 }] }), "stops[0].step must be a whole number from 1 to 6"],
  ])("refuses %s with a sentence", async (_why, bad, words) => {
    const logbook = await openLogbook();
    const refused = logbook.save(bad);
    await expect(refused).rejects.toThrow(RecordError);
    await expect(refused).rejects.toThrow(words);
    expect(logbook.pending).toEqual([]);
  });
});

describe("asking for storage that lasts", () => {
  const keeper = (was: boolean, will: boolean) => ({ persisted: async () => was, persist: async () => will });
  test.each([
    ["promised before", keeper(true, false), "kept"],
    ["promised now", keeper(false, true), "kept"],
    ["refused", keeper(false, false), "refused"],
    ["nobody to ask", undefined, "unknown"],
    ["an answer that fails", { ...keeper(false, false), persist: () => Promise.reject(new Error()) }, "unknown"],
  ])("%s", async (_why, asked, answer) => {
    expect(await askToPersist(asked)).toBe(answer);
  });
});

describe("an attempt of which no motion may be kept any more", () => {
  const bare = {
    kind: "attempts" as const,
    record: anAttempt("one", { sources: [describeSource("ordinary-dial", 0.06, null, false)] }),
  };

  test("loses the motion that was stored of it before", async () => {
    const logbook = await openLogbook();
    await logbook.save(write("one"));
    expect(await motionOf(logbook, "one")).toBeDefined();
    await logbook.save(bare);
    expect(await motionOf(logbook, "one")).toBeUndefined();
  });

  test("loses the motion that waits with it", async () => {
    const logbook = new Logbook(new LogbookDatabase("test"));
    await logbook.open();
    await logbook.save(write("one"));
    await logbook.save(bare);
    expect(await motionOf(logbook, "one")).toBeUndefined();
  });
});
