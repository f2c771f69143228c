import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { demoLogbook } from "../../../src/progress/demo/demoLogbook";
import { describeSource } from "../../../src/realdial/sources/sourceDescription";
import type { AttemptRecord } from "../../../src/records/attemptRecord";
import { readLogbookFile } from "../../../src/records/file/logbookFile";
import { replayedLogbook } from "../../../src/records/file/replayedAttempts";
import { fileSentences } from "../../../src/records/fileWords";
import { contentsOf, type LogbookContents } from "../../../src/records/logbookContents";
import { sameRecordings } from "../../../src/records/motion/sameRecordings";
import { aPerson, NOON } from "../../support/logbookRecords";

const demo = demoLogbook(3, NOON);
const first = demo.records.people.find(({ name }) => name === "Mibsy");
const own = contentsOf(new Set([first?.id ?? ""]), demo);

/** The logbook with one attempt changed. */
function withAttempt(find: (one: AttemptRecord) => boolean, fields: Partial<AttemptRecord>): LogbookContents {
  const index = own.records.attempts.findIndex(find);
  const attempts = own.records.attempts.map((one, k) => (k === index ? { ...one, ...fields } : one));
  expect(index).toBeGreaterThanOrEqual(0);
  return { ...own, records: { ...own.records, attempts } };
}

describe("a logbook on the desk", () => {
  test("of honest hands is replayed whole, one that version 0.2.0 wrote too", () => {
    expect(replayedLogbook(demo)).toEqual({ contents: demo, leftOut: [] });
    const before = readLogbookFile(readFileSync("tests/fixtures/0.2.0/logbook.json", "utf8"));
    expect(before.records.attempts.length).toBeGreaterThan(5);
    expect(replayedLogbook(before)).toEqual({ contents: before, leftOut: [] });
  });

  test.each<[string, (one: AttemptRecord) => boolean, Partial<AttemptRecord>, RegExp]>([
    [
      "a miss called an opening",
      ({ opened }) => !opened,
      { opened: true },
      /^1 attempt of .* left out: recorded as opened/,
    ],
    ["an opening called a miss", ({ opened }) => opened, { opened: false }, /left out: recorded as missed/],
    [
      "a quicker opening",
      ({ opened }) => opened,
      { duration_ms: 900 },
      /left out: its time is not that of its recording/,
    ],
    [
      "truer stops",
      ({ opened }) => opened,
      { stops: (own.records.attempts.find(({ opened }) => opened)?.stops ?? []).map((one) => ({ ...one, error: 0 })) },
      /left out: its stop errors are not those of its recording/,
    ],
    [
      "a lock that is not known here",
      () => true,
      { profileId: "of-another-school" },
      /left out: a lock that is not known/,
    ],
    [
      "an opening that was never finished",
      ({ opened }) => opened,
      { isUnfinished: true },
      /left out: recorded as opened/,
    ],
  ])("leaves out and names %s", (_, find, fields, words) => {
    const { contents, leftOut } = replayedLogbook(withAttempt(find, fields));
    expect(contents.records.attempts).toHaveLength(own.records.attempts.length - 1);
    expect(fileSentences(leftOut)).toEqual([expect.stringMatching(words)]);
  });

  test("leaves out an opening of which the hand chose to keep no motion, and says that this is why", () => {
    const opening = own.records.attempts.find(({ opened }) => opened);
    const sources = [describeSource("ordinary-dial", 0.06, null, false)];
    const { contents, traces } = {
      contents: withAttempt((one) => one === opening, { sources }),
      traces: new Map(own.traces),
    };
    traces.delete(opening?.id ?? "");
    const { leftOut } = replayedLogbook({ ...contents, traces });
    expect(fileSentences(leftOut)).toEqual([
      expect.stringMatching(
        /^1 attempt of .* left out: no recording, since the hand chose to keep none: not replayed\.$/,
      ),
    ]);
  });

  test("leaves out openings without a recording, and keeps misses", () => {
    const { contents, leftOut } = replayedLogbook({ ...own, traces: new Map() });
    expect(contents.records.attempts.every(({ opened }) => !opened)).toBe(true);
    expect(contents.records.attempts.length).toBeGreaterThan(0);
    expect(fileSentences(leftOut)).toEqual([expect.stringMatching(/^\d+ attempts of .* left out: no recording\.$/)]);
  });
});

describe("recordings under more than one attempt", () => {
  test("are none in an honest class", () => {
    expect(sameRecordings([demo])).toEqual([]);
  });

  test("are named across files, but not where a file came twice", () => {
    expect(sameRecordings([own, own])).toEqual([]);
    const copied: LogbookContents = {
      records: {
        ...own.records,
        people: [aPerson("copycat", { name: "Copycat" })],
        attempts: own.records.attempts.slice(0, 3).map((one) => ({ ...one, id: `x${one.id}`, personId: "copycat" })),
      },
      traces: new Map(
        own.records.attempts.slice(0, 3).map(({ id }) => [`x${id}`, own.traces.get(id) ?? new Uint8Array()]),
      ),
    };
    const names = ["Copycat", first?.name ?? ""].sort().join(" and ");
    expect(sameRecordings([own, copied])).toEqual([
      `${names}: 3 recordings come under more than one attempt, to the last move. One of them is a copy.`,
    ]);
  });
});
