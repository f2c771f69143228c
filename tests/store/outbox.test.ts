import { describe, expect, test } from "vitest";
import { LONGEST_MS } from "../../src/school/outbox/pace";
import { Logbook } from "../../src/store/logbook";
import { DATABASE_VERSION, LogbookDatabase } from "../../src/store/logbookDatabase";
import { deleteRecord, giveRecord, mergePeople } from "../../src/store/moveRecords";
import { joinedHere, joinHere, leaveHere } from "../../src/store/outbox/joinings";
import {
  bringForward,
  holdBack,
  nextToSend,
  outboxCounts,
  refusedRecords,
  sendAllAgain,
  settleSent,
} from "../../src/store/outbox/outbox";
import { deletePerson, mergeIntoLogbook, recordsOfKind, wholeLogbook } from "../../src/store/wholeLogbook";
import { rows4, TABLES_4 } from "../support/database4";
import {
  aJob,
  anAttempt,
  aPerson,
  contents,
  emptyHost,
  JOINED_ADA,
  NOON,
  openLogbook,
  SHORT_TRACE,
} from "../support/logbookRecords";
import { rawDatabase } from "../support/rawDatabase";

const DAY_MS = 24 * 3600 * 1000;

async function joinedBook(): Promise<Logbook> {
  const logbook = await openLogbook();
  await joinHere(logbook, JOINED_ADA);
  return logbook;
}
const saveAttempt = (logbook: Logbook, id: string, other: Parameters<typeof anAttempt>[1] = {}) =>
  logbook.save({ kind: "attempts", record: anAttempt(id, { personId: "ada", ...other }), trace: SHORT_TRACE });
const waiting = async (logbook: Logbook, now = NOON) =>
  (await nextToSend(logbook, 200, now)).map(({ record }) => record.id).sort();

describe("what waits for the class", () => {
  test("is what ended of a person who joined, with its motion", async () => {
    const logbook = await joinedBook();
    await saveAttempt(logbook, "a");
    await saveAttempt(logbook, "going-on", { isUnfinished: true });
    await saveAttempt(logbook, "of-another", { personId: "local" });
    await logbook.save({ kind: "jobs", record: aJob("j", { personId: "ada" }) });
    expect(await waiting(logbook)).toEqual(["a", "j"]);
    const sent = await nextToSend(logbook, 200, NOON);
    expect(sent.find(({ kind }) => kind === "attempts")).toMatchObject({ motion: expect.any(String) });
    expect(sent[0]?.record).not.toHaveProperty("tagKeys");
  });

  test("is there once what went on has ended", async () => {
    const logbook = await joinedBook();
    await saveAttempt(logbook, "a", { isUnfinished: true });
    expect(await waiting(logbook)).toEqual([]);
    await saveAttempt(logbook, "a");
    expect(await waiting(logbook)).toEqual(["a"]);
  });

  test("is marked in the transaction that stores it: neither is there without the other", async () => {
    const logbook = await joinedBook();
    const { database } = logbook;
    database?.outbox.hook("creating", () => {
      throw new Error("the disk is full");
    });
    expect(await saveAttempt(logbook, "a")).toMatchObject({ isStored: false });
    expect(await database?.attempts.count()).toBe(0);
    expect(logbook.pending.map(({ kind }) => kind)).toEqual(["people", "attempts"]);
  });

  test("holds what was recorded before joining, and what an import brings", async () => {
    const logbook = await openLogbook();
    await saveAttempt(logbook, "before");
    expect(await waiting(logbook)).toEqual([]);
    await joinHere(logbook, JOINED_ADA);
    expect(await waiting(logbook)).toEqual(["before"]);
    await mergeIntoLogbook(logbook, contents([aPerson("ada")], [anAttempt("brought", { personId: "ada" })]));
    expect(await waiting(logbook)).toEqual(["before", "brought"]);
  });

  test("has a zeroing that broke off only after hours in which it may be resumed, with its result at once", async () => {
    const logbook = await joinedBook();
    const zeroing = {
      createdAt: NOON,
      updatedAt: NOON,
      personId: "ada",
      startedAt: NOON,
      profileId: "dial-encoder",
      readings: [],
    };
    for (const id of ["left", "resumed"]) {
      await logbook.save({ kind: "zeroings", record: { ...zeroing, id, outcome: "broken-off" } });
    }
    await bringForward(logbook, NOON);
    expect(await waiting(logbook)).toEqual([]);
    await logbook.save({ kind: "zeroings", record: { ...zeroing, id: "resumed", outcome: "zero-set" } });
    expect(await waiting(logbook)).toEqual(["resumed"]);
    expect(await outboxCounts(logbook, NOON)).toEqual({ waiting: 1, refused: 0 });
    expect(await waiting(logbook, NOON + DAY_MS)).toEqual(["left", "resumed"]);
  });

  test("is not what was sent, though it is changed here later", async () => {
    const logbook = await joinedBook();
    await saveAttempt(logbook, "a");
    await settleSent(logbook, [{ id: "a", state: "sent" }]);
    await saveAttempt(logbook, "a", { tags: ["retake"] });
    expect(await waiting(logbook)).toEqual([]);
    await joinHere(logbook, { ...JOINED_ADA, joinedAt: NOON + 1 });
    expect(await waiting(logbook)).toEqual([]);
  });

  test("stays refused with its reason until it is sent again", async () => {
    const logbook = await joinedBook();
    await saveAttempt(logbook, "a");
    const problem = { code: "not-allowed", path: [], values: {} };
    await settleSent(logbook, [{ id: "a", state: "refused", problem }]);
    expect(await waiting(logbook)).toEqual([]);
    expect(await outboxCounts(logbook, NOON)).toEqual({ waiting: 0, refused: 1 });
    expect(await refusedRecords(logbook)).toMatchObject([
      { mark: { id: "a", problem }, sent: { kind: "attempts", record: { id: "a" } } },
    ]);
    await sendAllAgain(logbook);
    expect(await waiting(logbook)).toEqual(["a"]);
  });

  test("lets others go first once it is held back", async () => {
    const logbook = await joinedBook();
    await saveAttempt(logbook, "a");
    await saveAttempt(logbook, "b");
    await holdBack(logbook, "a", NOON + 1);
    expect(await waiting(logbook)).toEqual(["b"]);
    expect(await waiting(logbook, NOON + 1)).toEqual(["a", "b"]);
  });

  test("is not held back for longer than a wait after a failure by a clock that was ahead", async () => {
    const logbook = await joinedBook();
    for (const id of ["a", "b", "c"]) await saveAttempt(logbook, id);
    await holdBack(logbook, "a", NOON + 365 * DAY_MS);
    await holdBack(logbook, "b", NOON + LONGEST_MS);
    // What waits after a failure is told; nobody would see the other one wait.
    expect(await outboxCounts(logbook, NOON)).toMatchObject({ waiting: 2 });
    await bringForward(logbook, NOON);
    expect(await waiting(logbook)).toEqual(["a", "c"]);
    expect(await waiting(logbook, NOON + LONGEST_MS)).toEqual(["a", "b", "c"]);
  });
});

describe("who it belongs to", () => {
  test("a local person is made one with the person of the class: all goes to the class, nothing is lost", async () => {
    const logbook = await joinedBook();
    await logbook.save({ kind: "people", record: aPerson("local") });
    for (const id of ["a", "b"]) await saveAttempt(logbook, id, { personId: "local" });
    await logbook.save({ kind: "jobs", record: aJob("j", { personId: "local" }) });
    await mergePeople(logbook, "local", "ada");
    expect(await waiting(logbook)).toEqual(["a", "b", "j"]);
    // What another tab still writes for the one who is gone goes to the class too.
    await saveAttempt(logbook, "late", { personId: "local" });
    expect(await waiting(logbook)).toEqual(["a", "b", "j", "late"]);
    expect((await wholeLogbook(logbook)).records.attempts.map(({ personId }) => personId)).toEqual([
      "ada",
      "ada",
      "ada",
    ]);
  });

  test("two people again: what was not sent waits no more", async () => {
    const logbook = await joinedBook();
    await logbook.save({ kind: "people", record: aPerson("local") });
    await saveAttempt(logbook, "a", { personId: "local" });
    const undo = await mergePeople(logbook, "local", "ada");
    await undo();
    expect(await waiting(logbook)).toEqual([]);
  });

  test("a person of a class is not made one with a local person", async () => {
    const logbook = await joinedBook();
    await logbook.save({ kind: "people", record: aPerson("local") });
    await expect(mergePeople(logbook, "ada", "local")).rejects.toMatchObject({ code: "person-of-class" });
  });

  test("a record that is given away, given or deleted waits for whom it is of, or not at all", async () => {
    const logbook = await joinedBook();
    await logbook.save({ kind: "people", record: aPerson("local") });
    await saveAttempt(logbook, "a");
    const back = await giveRecord(logbook, "attempts", { id: "a", personId: "ada" }, "local");
    expect(await waiting(logbook)).toEqual([]);
    await back();
    expect(await waiting(logbook)).toEqual(["a"]);
    const undo = await deleteRecord(logbook, "attempts", "a");
    expect(await waiting(logbook)).toEqual([]);
    await undo();
    expect(await waiting(logbook)).toEqual(["a"]);
    await deletePerson(logbook, "ada", true);
    expect([await waiting(logbook), await joinedHere(logbook)]).toEqual([[], []]);
  });

  test("who leaves keeps all here, and it waits again once the person joins again", async () => {
    const logbook = await joinedBook();
    await saveAttempt(logbook, "sent");
    await settleSent(logbook, [{ id: "sent", state: "sent" }]);
    await saveAttempt(logbook, "a");
    await leaveHere(logbook, "ada");
    await saveAttempt(logbook, "after");
    expect(await waiting(logbook)).toEqual([]);
    expect((await recordsOfKind(logbook, "people")).map(({ name }) => name)).toEqual(["Ada"]);
    await joinHere(logbook, JOINED_ADA);
    expect(await waiting(logbook)).toEqual(["a", "after"]);
  });
});

test("a database of version 5 is taken over whole, and waits with what is joined from then on", async () => {
  const host = emptyHost();
  const tables = { ...TABLES_4, handoverRuns: ["personId"] };
  const run = {
    id: "h",
    createdAt: NOON,
    updatedAt: NOON,
    startedAt: NOON,
    personId: "p",
    isRunning: true,
    body: "steps",
  };
  (await rawDatabase(host, "old", 50, tables, { ...rows4(), handoverRuns: [run] })).close();
  const logbook = new Logbook(new LogbookDatabase("old", host));
  await logbook.open();
  expect(logbook.problem).toBeNull();
  expect(logbook.database?.verno).toBe(DATABASE_VERSION);
  const { records, traces } = await wholeLogbook(logbook);
  const counts = Object.fromEntries(Object.entries(records).map(([kind, list]) => [kind, list.length]));
  expect(counts).toMatchObject({ attempts: 4, jobs: 3, sittings: 1, sheets: 1, handoverRuns: 1 });
  expect(traces.size).toBe(4);
  const [first] = records.attempts;
  await joinHere(logbook, { ...JOINED_ADA, id: first?.personId ?? "" });
  const theirs = records.attempts.filter(({ personId }) => personId === first?.personId).map(({ id }) => id);
  expect(await waiting(logbook)).toEqual(expect.arrayContaining(theirs));
});
