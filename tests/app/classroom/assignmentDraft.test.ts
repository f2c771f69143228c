import { expect, test } from "vitest";
import {
  type AssignmentDraft,
  draftOf,
  draftProblems,
  newDraft,
  termsOf,
} from "../../../src/app/classroom/assignments/assignmentDraft";
import {
  type Assignment,
  extraText,
  forText,
  soFarText,
  standingText,
} from "../../../src/app/classroom/assignments/assignmentWords";
import { testSheet } from "../../support/testSheet";

const NOW = Date.UTC(2026, 2, 2, 8, 3, 20);
const HOUR = 3_600_000;

const ASSIGNMENT: Assignment = {
  id: "a",
  classId: "c",
  title: "Friday test",
  fingerprint: "7F3A-91C2",
  kind: "test",
  from: NOW,
  until: NOW + HOUR,
  attempts: 2,
  people: ["ada", "bo"],
  extraTime: [
    { personId: "bo", percent: 50 },
    { personId: "cy", percent: 25 },
  ],
  version: 3,
  createdAt: NOW,
  endedAt: null,
  begun: 0,
  received: 0,
};

const sound: AssignmentDraft = { ...newDraft(NOW), sheet: testSheet() };

test("a new one is a test of one attempt for the whole class, from this minute, for a week", () => {
  expect(draftProblems(sound, null)).toEqual({});
  const { from, until, ...terms } = termsOf(sound, null);
  expect(terms).toEqual({ kind: "test", attempts: 1, people: null, extraTime: [] });
  expect([from, until]).toEqual([NOW - 20_000, NOW - 20_000 + 168 * HOUR]);
});

test("one that is changed and left as it was is sent as it was, without its sheet", () => {
  const draft = draftOf(ASSIGNMENT);
  expect(draft.sheet).toBeNull();
  expect(draftProblems(draft, ASSIGNMENT)).toEqual({});
  // Cy is not among those whom it is for.
  expect(termsOf(draft, ASSIGNMENT)).toEqual({
    kind: "test",
    from: NOW,
    until: NOW + HOUR,
    attempts: 2,
    people: ["ada", "bo"],
    extraTime: [{ personId: "bo", percent: 50 }],
  });
});

test.each<{ readonly why: string; readonly part: Partial<AssignmentDraft>; readonly fields: readonly string[] }>([
  { why: "no sheet", part: { sheet: null }, fields: ["sheet"] },
  { why: "no beginning", part: { from: "" }, fields: ["from"] },
  { why: "no end", part: { until: "" }, fields: ["until"] },
  { why: "an end at the beginning", part: { until: sound.from }, fields: ["until"] },
  { why: "no attempt", part: { attempts: 0 }, fields: ["attempts"] },
  { why: "half an attempt", part: { attempts: 1.5 }, fields: ["attempts"] },
  { why: "an empty number of attempts", part: { attempts: undefined }, fields: ["attempts"] },
  { why: "nobody chosen", part: { isWhole: false }, fields: ["people"] },
  { why: "too much extra time", part: { extraTime: new Map([["ada", 301]]) }, fields: ["extraTime"] },
  { why: "no limit, whatever stands in the field", part: { hasLimit: false, attempts: undefined }, fields: [] },
])("$why is said at its field", ({ part, fields }) => {
  expect(Object.keys(draftProblems({ ...sound, ...part }, null))).toEqual(fields);
});

test("without a limit it is sent as one may begin it as often as one likes", () => {
  expect(termsOf({ ...sound, hasLimit: false }, null).attempts).toBeNull();
});

test.each([
  [{}, NOW, "Open now"],
  [{}, NOW - 1, "Not open yet"],
  [{}, NOW + HOUR, "Over"],
  [{ attempts: 1, begun: 9 }, NOW, "Open now"],
])("with %j it stands as %s says", (part, now, words) => {
  expect(standingText({ ...ASSIGNMENT, ...part }, now)).toBe(words);
});

test("one that was ended says so, whatever its time", () => {
  expect(standingText({ ...ASSIGNMENT, endedAt: NOW }, NOW)).toMatch(/^Ended early, Mar 2, 2026, /);
});

test("a few people are named; many, and those who left, are counted", () => {
  const names = new Map([
    ["ada", "Ada"],
    ["bo", "Bo"],
  ]);
  expect(forText(ASSIGNMENT, names)).toBe("Ada, Bo");
  expect(forText({ ...ASSIGNMENT, people: ["ada", "gone"] }, names)).toBe("2 people");
  expect(forText({ ...ASSIGNMENT, people: ["ada", "bo", "cy", "di"] }, names)).toBe("4 people");
  expect(forText({ ...ASSIGNMENT, people: null }, names)).toBe("the whole class");
  expect(extraText(ASSIGNMENT)).toBe("; own extra time for 2 people");
  expect(soFarText({ ...ASSIGNMENT, begun: 3, received: 2 })).toBe("3 begun, 2 received");
});

test("one that is assigned anew keeps its terms and begins now, for a week", () => {
  const later = NOW + 30 * 24 * HOUR;
  const { from, until } = newDraft(later);
  expect(newDraft(later, { ...ASSIGNMENT, endedAt: NOW })).toEqual({ ...draftOf(ASSIGNMENT), from, until });
  expect(from).not.toBe(draftOf(ASSIGNMENT).from);
});
