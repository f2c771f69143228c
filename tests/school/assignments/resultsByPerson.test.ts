import { expect, test } from "vitest";
import { personsResult, type SittingLine } from "../../../src/school/assignments/resultsByPerson";

const line = (attempt: number, fields: Partial<SittingLine> = {}): SittingLine => ({
  sittingId: `s${attempt}`,
  attempt,
  begunAt: 1000 * attempt,
  receivedAt: 1000 * attempt + 500,
  outcome: "failed",
  right: 0.5,
  reloads: 1,
  isLate: false,
  problems: 0,
  ...fields,
});

test.each<{ readonly why: string; readonly lines: readonly SittingLine[]; readonly best: string | null }>([
  { why: "nothing was begun", lines: [], best: null },
  { why: "nothing has come in", lines: [line(1, { receivedAt: null, outcome: null })], best: null },
  { why: "it does not agree", lines: [line(1, { outcome: null, problems: 2, right: 1 })], best: null },
  {
    why: "a pass is better than more that is right",
    lines: [line(1, { right: 1 }), line(2, { outcome: "passed" })],
    best: "s2",
  },
  { why: "not shown is better than failed", lines: [line(2), line(1, { outcome: "not shown yet" })], best: "s1" },
  {
    why: "broken off is worse than failed",
    lines: [line(1, { outcome: "broken-off", right: 1 }), line(2)],
    best: "s2",
  },
  { why: "more that is right decides", lines: [line(1), line(2, { right: 0.6 })], best: "s2" },
  { why: "the earlier of two alike", lines: [line(2), line(1)], best: "s1" },
])("the best where $why: $best", ({ lines, best }) => {
  expect(personsResult(lines).best?.sittingId ?? null).toBe(best);
});

test("the latest is the one begun last, and reloads of all are counted", () => {
  const found = personsResult([line(2, { receivedAt: null, outcome: null, reloads: 0 }), line(1, { reloads: 3 })]);
  expect(found).toMatchObject({ begun: 2, received: 1, reloads: 3, latest: { attempt: 2 } });
});

test("every sitting is the best, the latest or one of the others, which stand in the order they were begun", () => {
  const lines = [line(3), line(1), line(4, { outcome: null, receivedAt: null }), line(2, { right: 0.9 })];
  const { best, latest, others } = personsResult(lines);
  expect([best?.attempt, latest?.attempt, others.map(({ attempt }) => attempt)]).toEqual([2, 4, [1, 3]]);
});
