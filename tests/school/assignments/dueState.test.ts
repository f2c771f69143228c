import fc from "fast-check";
import { expect, test } from "vitest";
import { attemptsLeft, dueLater, dueState } from "../../../src/school/assignments/assignment";

const NINE = 9 * 3600 * 1000;
const TEN = 10 * 3600 * 1000;
const TERMS = { from: NINE, until: TEN, attempts: 2, endedAt: null };

test.each([
  { now: NINE - 1, begun: 0, state: "not-yet" },
  { now: NINE, begun: 0, state: "open" },
  { now: NINE, begun: 1, state: "open" },
  { now: NINE, begun: 2, state: "used-up" },
  { now: NINE - 1, begun: 2, state: "used-up" },
  { now: TEN - 1, begun: 0, state: "open" },
  { now: TEN, begun: 0, state: "over" },
  { now: TEN, begun: 2, state: "over" },
])("at $now with $begun of 2 begun it is $state", ({ now, begun, state }) => {
  expect(dueState(TERMS, begun, now)).toBe(state);
});

test.each([
  { endedAt: NINE + 5, now: NINE + 4, state: "open" },
  { endedAt: NINE + 5, now: NINE + 5, state: "over" },
])("one that an instructor ended is over from then on: $state", ({ endedAt, now, state }) => {
  expect(dueState({ ...TERMS, endedAt }, 0, now)).toBe(state);
});

test.each([
  { attempts: 2, begun: 0, left: 2 },
  { attempts: 2, begun: 3, left: 0 },
  { attempts: null, begun: 3, left: null },
])("of $attempts attempts $left are left after $begun", ({ attempts, begun, left }) => {
  expect(attemptsLeft({ attempts }, begun)).toBe(left);
  expect(dueState({ ...TERMS, attempts }, begun, NINE)).toBe(left === 0 ? "used-up" : "open");
});

test("what a bench makes of an answer later on is what the server would say then", () => {
  const hour = fc.integer({ min: 0, max: 24 });
  const terms = fc.record({ from: hour, until: hour, attempts: fc.option(fc.integer({ min: 1, max: 3 })) });
  fc.assert(
    fc.property(terms, hour, hour, fc.integer({ min: 0, max: 4 }), (some, told, later, begun) => {
      const known = { ...some, endedAt: null };
      const sittings = Array.from({ length: begun }, () => null);
      const due = { ...some, state: dueState(known, begun, told), left: attemptsLeft(known, begun), sittings };
      expect(dueLater(due, told + later).state).toBe(dueState(known, begun, told + later));
    }),
  );
});
