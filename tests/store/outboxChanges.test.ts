import { describe, expect, test } from "vitest";
import type { Logbook } from "../../src/store/logbook";
import { deleteRecord } from "../../src/store/moveRecords";
import {
  type ChangesPart,
  nextChanges,
  settleDeletions,
  settleEdits,
  toldChanges,
  understood,
} from "../../src/store/outbox/changes";
import { joinHere } from "../../src/store/outbox/joinings";
import { holdBack, nextToSend, outboxCounts, sendAllAgain, settleSent } from "../../src/store/outbox/outbox";
import { mergeIntoLogbook } from "../../src/store/wholeLogbook";
import { anAttempt, aPerson, contents, JOINED_ADA, NOON, openLogbook, SHORT_TRACE } from "../support/logbookRecords";

const LATER = NOON + 1000;

const noted = (note: string, updatedAt = LATER) => anAttempt("a", { personId: "ada", note, updatedAt });
const save = (logbook: Logbook, record = anAttempt("a", { personId: "ada" })) =>
  logbook.save({ kind: "attempts", record, trace: SHORT_TRACE });

/** A logbook with one attempt that the class has. */
async function sentBook(): Promise<Logbook> {
  const logbook = await openLogbook();
  await joinHere(logbook, JOINED_ADA);
  await save(logbook);
  await settleSent(logbook, [{ id: "a", state: "sent" }]);
  return logbook;
}

const next = (logbook: Logbook) => nextChanges(logbook, 200, NOON);
type Edits = Extract<ChangesPart, { kind: "edits" }>["edits"];
const edits = async (logbook: Logbook): Promise<Edits> => {
  const part = await next(logbook);
  return part?.kind === "edits" ? part.edits : [];
};
const noteHere = async (logbook: Logbook) => (await logbook.database?.attempts.get("a"))?.note;
const taken = { recordId: "a", outcome: "taken" as const, version: 1 };

describe("a note to a record that the class has", () => {
  test("goes as an edit, once", async () => {
    const logbook = await sentBook();
    expect(await next(logbook)).toBeNull();
    await save(logbook, noted("light grip"));
    expect(await outboxCounts(logbook, NOON)).toMatchObject({ waiting: 1 });
    const sent = await edits(logbook);
    expect(sent).toEqual([{ recordId: "a", base: 0, tags: [], note: "light grip", at: LATER }]);
    expect(await settleEdits(logbook, sent, [taken])).toBe(1);
    expect(await next(logbook)).toBeNull();
    await save(logbook, noted("", LATER + 1));
    expect(await edits(logbook)).toMatchObject([{ base: 1, note: "" }]);
  });

  test("is none where nothing of it changed", async () => {
    const logbook = await sentBook();
    await save(logbook);
    expect(await next(logbook)).toBeNull();
  });

  test("is marked in the transaction that stores it: neither is there without the other", async () => {
    const logbook = await sentBook();
    logbook.database?.outbox.hook("updating", () => {
      throw new Error("the disk is full");
    });
    expect(await save(logbook, noted("x"))).toMatchObject({ isStored: false });
    expect(await noteHere(logbook)).toBeUndefined();
  });

  test("written again while the first is on its way goes too, on top of it", async () => {
    const logbook = await sentBook();
    await save(logbook, noted("first"));
    const sent = await edits(logbook);
    await save(logbook, noted("second", LATER + 1));
    await settleEdits(logbook, sent, [taken]);
    expect(await edits(logbook)).toMatchObject([{ base: 1, note: "second" }]);
  });

  test("that comes by an import goes too", async () => {
    const logbook = await sentBook();
    await mergeIntoLogbook(logbook, contents([aPerson("ada")], [{ ...noted("brought"), revision: 99 }]));
    expect(await edits(logbook)).toMatchObject([{ note: "brought" }]);
  });

  test("of which another one holds takes that over, and tells what was written here until it is read", async () => {
    const logbook = await sentBook();
    await save(logbook, noted("mine"));
    const sent = await edits(logbook);
    const receipt = { recordId: "a", outcome: "other-holds" as const, version: 3, tags: ["retake"], note: "theirs" };
    await settleEdits(logbook, sent, [receipt]);
    expect(await noteHere(logbook)).toBe("theirs");
    expect((await logbook.database?.attempts.get("a"))?.tagKeys).toHaveLength(1);
    expect(await toldChanges(logbook)).toMatchObject([{ id: "a", overruled: { note: "mine", tags: [] } }]);
    expect(await outboxCounts(logbook, NOON)).toEqual({ waiting: 0, refused: 0 });
    await understood(logbook);
    expect(await toldChanges(logbook)).toEqual([]);
    await save(logbook, noted("again", LATER + 5));
    expect(await edits(logbook)).toMatchObject([{ base: 3, note: "again" }]);
  });

  test("that was written before it was known that the class has the record goes as an edit", async () => {
    const logbook = await openLogbook();
    await joinHere(logbook, JOINED_ADA);
    await save(logbook);
    await save(logbook, noted("too soon"));
    const problem = { code: "changed", path: [], values: {} };
    await settleSent(logbook, [{ id: "a", state: "refused", problem }]);
    expect(await edits(logbook)).toMatchObject([{ base: 0, note: "too soon" }]);
  });

  test("is held back and asked for again as a record is", async () => {
    const logbook = await sentBook();
    await save(logbook, noted("x"));
    await holdBack(logbook, "a", NOON + 1);
    expect(await next(logbook)).toBeNull();
    await sendAllAgain(logbook);
    expect(await edits(logbook)).toHaveLength(1);
  });

  test("is sent again where the answer is about another record", async () => {
    const logbook = await sentBook();
    await save(logbook, noted("x"));
    expect(await settleEdits(logbook, await edits(logbook), [{ ...taken, recordId: "b" }])).toBe(0);
    expect(await edits(logbook)).toHaveLength(1);
  });
});

describe("a record that is deleted here", () => {
  test.each([{ state: "sent" as const }, { state: "waiting" as const }])(
    "is deleted at the class: $state",
    async ({ state }) => {
      const logbook = await openLogbook();
      await joinHere(logbook, JOINED_ADA);
      await save(logbook);
      if (state === "sent") await settleSent(logbook, [{ id: "a", state }]);
      await deleteRecord(logbook, "attempts", "a");
      expect(await next(logbook)).toEqual({ kind: "deletions", records: ["a"] });
      // What was on its way then is answered for now.
      await settleSent(logbook, [{ id: "a", state: "sent" }]);
      expect(await next(logbook)).toEqual({ kind: "deletions", records: ["a"] });
      await settleDeletions(logbook, ["a"], [{ recordId: "a", outcome: "deleted" }]);
      expect(await logbook.database?.outbox.count()).toBe(0);
    },
  );

  test("and brought back waits as a record, not as a deletion", async () => {
    const logbook = await sentBook();
    const undo = await deleteRecord(logbook, "attempts", "a");
    await undo();
    expect(await next(logbook)).toBeNull();
    expect((await nextToSend(logbook, 200, NOON)).map(({ record }) => record.id)).toEqual(["a"]);
    await settleDeletions(logbook, ["a"], [{ recordId: "a", outcome: "deleted" }]);
    expect(await nextToSend(logbook, 200, NOON)).toHaveLength(1);
  });

  test("that the class keeps is told", async () => {
    const logbook = await sentBook();
    await deleteRecord(logbook, "attempts", "a");
    await settleDeletions(logbook, ["a"], [{ recordId: "a", outcome: "stays" }]);
    expect(await toldChanges(logbook)).toMatchObject([{ id: "a", kind: "attempts" }]);
    expect(await next(logbook)).toBeNull();
  });

  test("of somebody who is in no class goes nowhere", async () => {
    const logbook = await openLogbook();
    await save(logbook);
    await deleteRecord(logbook, "attempts", "a");
    expect(await next(logbook)).toBeNull();
  });
});
