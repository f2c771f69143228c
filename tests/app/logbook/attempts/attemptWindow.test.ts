import { expect, test, vi } from "vitest";
import { AttemptWindow, BLOCK } from "../../../../src/app/logbook/attempts/attemptWindow";
import { mergeIntoLogbook } from "../../../../src/store/wholeLogbook";
import { anAttempt, aPerson, contents, NOON, openLogbook } from "../../../support/logbookRecords";

const COUNT = 20 * BLOCK + 7;
const ALL = { personId: "tavro" };

/** Attempt number n of all, counted from 1 at the oldest. */
const attempt = (n: number) =>
  anAttempt(`n${n}`, { startedAt: NOON + 1000 * n, opened: n % 2 === 0, profileId: "three-wheel" });

/** A window over a logbook of many attempts. */
async function aWindow() {
  const logbook = await openLogbook();
  const attempts = Array.from({ length: COUNT }, (_, i) => attempt(i + 1));
  await mergeIntoLogbook(logbook, contents([aPerson("tavro")], attempts));
  return { logbook, attempts: new AttemptWindow(logbook) };
}

const idsOf = (attempts: AttemptWindow, first: number, last: number) =>
  Array.from({ length: last - first + 1 }, (_, i) => attempts.at(first + i)?.id);

/** Looks at places and waits until they are in memory. */
async function look(attempts: AttemptWindow, first: number, last: number): Promise<void> {
  attempts.look(first, last);
  await vi.waitFor(() => expect(idsOf(attempts, first, last)).not.toContain(undefined));
}

test("the count and the first rows are there together", async () => {
  const { attempts } = await aWindow();
  expect(attempts.count).toBeNull();
  await attempts.ask(ALL);
  expect(attempts.count).toBe(COUNT);
  expect(idsOf(attempts, 0, 2)).toEqual([`n${COUNT}`, `n${COUNT - 1}`, `n${COUNT - 2}`]);
});

test("every place is read once it is looked at, going on or leaping, and few are held", async () => {
  const { attempts } = await aWindow();
  await attempts.ask(ALL);
  await look(attempts, COUNT - 4, COUNT - 1);
  expect(idsOf(attempts, COUNT - 4, COUNT - 1)).toEqual(["n4", "n3", "n2", "n1"]);
  for (let place = 0; place < COUNT; place += 30) {
    await look(attempts, place, Math.min(place + 29, COUNT - 1));
    expect(attempts.at(place)?.id).toBe(`n${COUNT - place}`);
  }
  expect(attempts.held.length).toBeLessThan(COUNT);
  expect(attempts.held).toEqual(attempts.held.toSorted((one, other) => one - other));
});

test("an attempt that comes in moves the view with its rows, and a changed one does not", async () => {
  const { logbook, attempts } = await aWindow();
  await attempts.ask(ALL);
  await look(attempts, 200, 210);
  const seen = attempts.at(200);
  await logbook.save({ kind: "attempts", record: attempt(COUNT + 1) });
  await attempts.ask(ALL);
  expect(attempts.moved).toBe(1);
  expect(attempts.count).toBe(COUNT + 1);
  expect(attempts.at(201)).toEqual(seen);
  await logbook.save({ kind: "attempts", record: { ...attempt(COUNT - 200), tags: ["cold"], updatedAt: NOON + 1 } });
  await attempts.ask(ALL);
  expect(attempts.moved).toBe(1);
  expect(attempts.at(201)).toMatchObject({ id: seen?.id, tags: ["cold"] });
});

test("another filter is another list, and the last one asked for is shown", async () => {
  const { attempts } = await aWindow();
  await attempts.ask(ALL);
  const first = attempts.name;
  await look(attempts, 300, 310);
  await Promise.all([attempts.ask({ ...ALL, profileId: "none" }), attempts.ask({ ...ALL, onlyMisses: true })]);
  expect(attempts.name).not.toBe(first);
  expect(attempts.count).toBe((COUNT + 1) / 2);
  expect(idsOf(attempts, 0, 1)).toEqual([`n${COUNT}`, `n${COUNT - 2}`]);
});

test("a failing storage is told in words, and what was shown stays", async () => {
  const { logbook, attempts } = await aWindow();
  await attempts.ask(ALL);
  const refusing = vi.spyOn(logbook, "read").mockRejectedValue(new Error("The disk is gone."));
  await attempts.ask(ALL);
  expect(attempts.problem).toBe("The disk is gone.");
  expect(attempts.at(0)?.id).toBe(`n${COUNT}`);
  refusing.mockRestore();
  await attempts.ask(ALL);
  expect(attempts.problem).toBeNull();
});
