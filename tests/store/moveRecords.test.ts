import { expect, test } from "vitest";
import { allAttempts, motionOf } from "../../src/store/attemptQueries";
import { tagsOfAttempts } from "../../src/store/attemptTags";
import type { Logbook } from "../../src/store/logbook";
import { deleteRecord, giveRecord, mergePeople } from "../../src/store/moveRecords";
import { mergeIntoLogbook, recordsOfKind, wholeLogbook } from "../../src/store/wholeLogbook";
import { aJob, anAttempt, contents, emptyHost, NOON, openLogbook, theirPeople } from "../support/logbookRecords";

const ids = async (logbook: Logbook, personId: string) =>
  (await allAttempts(logbook, { personId })).map(({ id }) => id).sort();

async function school(): Promise<Logbook> {
  const logbook = await openLogbook();
  const attempts = [anAttempt("a", { tags: ["cold"] }), anAttempt("b"), anAttempt("c", { personId: "mibsy" })];
  await mergeIntoLogbook(logbook, contents(theirPeople, attempts));
  const own = { createdAt: NOON, updatedAt: NOON, personId: "tavro", declaredAt: NOON, attempts: 12 };
  const skill = { profileId: "three-wheel", exercise: "open" };
  await logbook.save(
    { kind: "jobs", record: aJob("j") },
    { kind: "declarations", record: { ...own, ...skill, id: "shown:tavro" } },
    { kind: "declarations", record: { ...own, ...skill, id: "shown:mibsy", personId: "mibsy" } },
  );
  return logbook;
}

/** Who has what, without the count of writings. */
const picture = async (logbook: Logbook) => {
  const { records, traces } = await wholeLogbook(logbook);
  const bare = (list: readonly object[]) => list.map((one) => ({ ...one, revision: 0 }));
  return [Object.fromEntries(Object.entries(records).map(([kind, list]) => [kind, bare(list)])), traces];
};

test("an attempt is given to another person with its tags and motion, and back", async () => {
  const logbook = await school();
  const before = await picture(logbook);
  const undo = await giveRecord(logbook, "attempts", anAttempt("a"), "mibsy");
  expect([await ids(logbook, "tavro"), await ids(logbook, "mibsy")]).toEqual([["b"], ["a", "c"]]);
  expect([await tagsOfAttempts(logbook, "tavro"), await tagsOfAttempts(logbook, "mibsy")]).toEqual([[], ["cold"]]);
  expect(await motionOf(logbook, "a")).toBeDefined();
  await undo();
  expect(await picture(logbook)).toEqual(before);
});

test("is not given to somebody who is gone, nor what is gone to anybody", async () => {
  const logbook = await school();
  await expect(giveRecord(logbook, "attempts", anAttempt("a"), "nobody")).rejects.toThrow("choose another one");
  await expect(giveRecord(logbook, "jobs", aJob("none"), "mibsy")).rejects.toThrow("not here any more");
  expect(await ids(logbook, "tavro")).toEqual(["a", "b"]);
});

test("an attempt and a job are deleted, and come back as they were", async () => {
  const logbook = await school();
  const before = await picture(logbook);
  const undoAttempt = await deleteRecord(logbook, "attempts", "a");
  const undoJob = await deleteRecord(logbook, "jobs", "j");
  expect([await ids(logbook, "tavro"), await recordsOfKind(logbook, "jobs")]).toEqual([["b"], []]);
  expect(await motionOf(logbook, "a")).toBeUndefined();
  await undoJob();
  await undoAttempt();
  expect(await picture(logbook)).toEqual(before);
});

test("two people become one, with each skill shown once, and two again", async () => {
  const logbook = await school();
  const before = await picture(logbook);
  const undo = await mergePeople(logbook, "tavro", "mibsy");
  expect(await ids(logbook, "mibsy")).toEqual(["a", "b", "c"]);
  expect((await recordsOfKind(logbook, "people")).map(({ id }) => id).sort()).toEqual(["dorvik", "mibsy"]);
  expect((await recordsOfKind(logbook, "jobs")).map(({ personId }) => personId)).toEqual(["mibsy"]);
  expect((await recordsOfKind(logbook, "declarations")).map(({ id }) => id)).toEqual(["shown:mibsy"]);
  expect(logbook.people.personFor("tavro")).toBe("mibsy");
  await undo();
  expect(await picture(logbook)).toEqual(before);
  expect(logbook.people.personFor("tavro")).toBe("tavro");
});

test("one who was merged away stays away, whatever another tab still has in hand, until the merge is undone", async () => {
  const host = emptyHost();
  const [here, there] = [await openLogbook(host), await openLogbook(host)];
  await mergeIntoLogbook(here, contents(theirPeople, []));
  there.people.know(await recordsOfKind(there, "people"));
  const undo = await mergePeople(here, "tavro", "mibsy");
  await there.save({ kind: "attempts", record: anAttempt("late") });
  expect((await recordsOfKind(here, "people")).map(({ id }) => id).sort()).toEqual(["dorvik", "mibsy"]);
  expect([await ids(here, "mibsy"), there.people.personFor("tavro")]).toEqual([["late"], "mibsy"]);
  await undo();
  const again = await openLogbook(host);
  again.people.know(theirPeople);
  await again.save({ kind: "attempts", record: anAttempt("own") });
  expect(await ids(again, "tavro")).toEqual(["own"]);
});

test("one who is gone for good takes nobody's records along: a person who was merged into somebody deleted comes back", async () => {
  const logbook = await openLogbook();
  await mergeIntoLogbook(logbook, contents(theirPeople, []));
  await mergePeople(logbook, "tavro", "mibsy");
  await logbook.change((database) => database.people.delete("mibsy"));
  await logbook.save({ kind: "attempts", record: anAttempt("late") });
  expect(await ids(logbook, "tavro")).toEqual(["late"]);
});
