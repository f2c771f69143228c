import { expect, test } from "vitest";
import { keepDue, keptDue } from "../../src/store/outbox/dueHere";
import { changeJoinings, joinedHere, joinHere, leaveHere } from "../../src/store/outbox/joinings";
import { deletePerson } from "../../src/store/wholeLogbook";
import { JOINED_ADA, NOON, openLogbook } from "../support/logbookRecords";

const ONE = { assignmentId: "a", title: "Friday test", kind: "test", from: 0, until: NOON, state: "open" } as const;
const LIST = { now: NOON, due: [{ ...ONE, left: 2, extraTime: 0, sittings: [] }], unread: 0 };
const KEPT = { list: LIST, at: NOON + 5 };

async function withDue() {
  const logbook = await openLogbook();
  await joinHere(logbook, JOINED_ADA);
  await joinHere(logbook, { ...JOINED_ADA, id: "bo", name: "Bo" });
  await keepDue(logbook, "ada", KEPT);
  return logbook;
}

test("what is due is kept for whoever joined, and for nobody else", async () => {
  const logbook = await withDue();
  expect(await keptDue(logbook, "ada")).toEqual(KEPT);
  expect(await keptDue(logbook, "bo")).toBeNull();
  await keepDue(logbook, "nobody", KEPT);
  expect(await keptDue(logbook, "nobody")).toBeNull();
});

test.each([
  { how: "leaves the bench", act: leaveHere },
  { how: "is deleted from the bench", act: (...of: Parameters<typeof leaveHere>) => deletePerson(...of, true) },
])("it is gone when the person $how, and a late answer does not bring it back", async ({ act }) => {
  const logbook = await withDue();
  await act(logbook, "ada");
  await keepDue(logbook, "ada", KEPT);
  expect(await keptDue(logbook, "ada")).toBeNull();
  await joinHere(logbook, JOINED_ADA);
  expect(await keptDue(logbook, "ada")).toBeNull();
});

test("it is gone when the server says that it is theirs no more", async () => {
  const logbook = await withDue();
  await keepDue(logbook, "ada", null);
  expect(await keptDue(logbook, "ada")).toBeNull();
});

test("what another version kept otherwise is passed over", async () => {
  const logbook = await withDue();
  await logbook.database?.joinings.update("ada", { due: { list: { now: "noon" }, at: NOON } });
  expect(await keptDue(logbook, "ada")).toBeNull();
});

test("a new name takes it away from nobody, and brings nobody back who has left meanwhile", async () => {
  const logbook = await withDue();
  await leaveHere(logbook, "bo");
  await changeJoinings(logbook, [
    { ...JOINED_ADA, name: "Ada Hill" },
    { ...JOINED_ADA, id: "bo", name: "Bo Ellery" },
  ]);
  expect((await joinedHere(logbook)).map(({ name }) => name)).toEqual(["Ada Hill"]);
  expect(await keptDue(logbook, "ada")).toEqual(KEPT);
});
