import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { run } from "./fakeTerminal";

/* Files that version 0.2.0 wrote, read again; what was changed in them here must show. */

const fixture = (name: string) => readFileSync(`tests/fixtures/0.2.0/${name}`, "utf8");

const SITTING = fixture("sitting-passed.json");
const HANDOVER = fixture("handover.json");
const LOGBOOK = fixture("logbook.json");

/** Checks one file. @returns its exit status and its records */
async function check(text: string) {
  const { status, out } = await run(["records", "check", "a.json", "--json"], { "a.json": text });
  const records = out.split("\n").filter((line) => line !== "");
  return { status, records: records.map((line) => JSON.parse(line)) };
}

/** A text with one change, which must be in it. */
function changed(text: string, from: string, to: string): string {
  expect(text).toContain(from);
  return text.replace(from, to);
}

describe("gatefall records check", () => {
  test("tells of a sitting: result, person, sheet and fingerprint", async () => {
    const { status, records } = await check(SITTING);
    expect(status).toBe(0);
    expect(records).toMatchObject([
      {
        kind: "sitting",
        title: "Two locks, three questions",
        person: "Mibsy",
        date: "2026-11-20T08:00:05.000Z",
        result: "passed",
        fingerprint: expect.stringMatching(/^[0-9A-F]{4}-[0-9A-F]{4}$/),
        problems: [],
      },
    ]);
  });

  test("tells of a handover record", async () => {
    const { status, records } = await check(HANDOVER);
    expect(status).toBe(0);
    expect(records).toMatchObject([{ kind: "handover", title: "Tool crib, door 2", date: "2026-11-20", problems: [] }]);
  });

  test("says of a job that its facts are counted, which speaks not against a book of an earlier rule", async () => {
    const book = JSON.parse(LOGBOOK);
    book.jobs = book.jobs.map((job: { isRight: boolean }) => ({ ...job, isRight: !job.isRight }));
    const { status, records } = await check(JSON.stringify(book));
    expect(status).toBe(0);
    expect(records[0]).toMatchObject({ kind: "logbook", standing: "sound", problems: [] });
    expect(records[0].remarks).toEqual([expect.stringMatching(/against the facts in the record: the facts count\.$/)]);
  });

  test("tells of a logbook and of each sitting in it, by the sitting's own record", async () => {
    const { status, records } = await check(LOGBOOK);
    expect(status).toBe(0);
    expect(records.map(({ kind, result }) => [kind, result])).toEqual([
      ["logbook", null],
      ["sitting", "passed"],
      ["sitting", "not passed"],
    ]);
    // The motions lie beside the record there, and are replayed.
    expect(records[1]).toMatchObject({ replayed: 5, tries: 5 });
  });

  test.each([
    { why: "the verdict beside a record", text: () => changed(LOGBOOK, '"verdict":"failed"', '"verdict":"passed"') },
    { why: "a field inside a record", text: () => changed(SITTING, '"isBrokenOff": false', '"isBrokenOff": true') },
    { why: "a name inside a record", text: () => changed(SITTING, '"person": "Mibsy"', '"person": "Tavro"') },
    { why: "a field of a handover", text: () => changed(HANDOVER, '"faults": 0', '"faults": 1') },
  ])("$why was changed: status 1, and it says so", async ({ text }) => {
    const { status, records } = await check(text());
    expect(status).toBe(1);
    const bad = records.filter(({ problems }) => problems.length > 0);
    expect(bad).toHaveLength(1);
    expect(bad[0].standing).toMatch(/fails its check|differs from its file/);
    const genuine = (await check(LOGBOOK)).records.map(({ result }) => result);
    if (records[0].kind === "logbook") expect(records.map(({ result }) => result)).toEqual(genuine);
    else expect(bad[0].result).toBe(null);
  });

  test.each([
    { why: "another file of ours", text: '{"format": "gatefall-sheet", "version": 1}' },
    { why: "no object", text: "[1, 2]" },
    { why: "a record without its hash", text: '{"format": "gatefall-sitting", "version": 1}' },
    { why: "a logbook of a later version", text: '{"format": "gatefall-logbook", "version": 99}' },
  ])("$why is told in a sentence, with status 1", async ({ text }) => {
    const { status, records } = await check(text);
    expect(status).toBe(1);
    expect(records).toHaveLength(1);
    expect(records[0]).toMatchObject({ standing: "cannot be read", result: null });
    expect(records[0].problems[0]).toMatch(/^It cannot be read: .+\.$/);
  });

  test.each([
    { why: "no file", args: ["records", "check"] },
    { why: "another verb", args: ["records", "mend", "a.json"] },
    { why: "a file that is not there", args: ["records", "check", "b.json"] },
    { why: "no JSON", args: ["records", "check", "bad.json"] },
    { why: "a file nested too deep", args: ["records", "check", "deep.json"] },
  ])("$why gets status 2 and a sentence", async ({ args }) => {
    const { status, complaints } = await run(args, {
      "a.json": SITTING,
      "bad.json": "{",
      "deep.json": "[".repeat(5000),
    });
    expect(status).toBe(2);
    expect(complaints).toHaveLength(1);
  });

  test("in words: a line a record, a mark before what does not fit", async () => {
    const forged = changed(LOGBOOK, '"verdict":"failed"', '"verdict":"passed"');
    const { out } = await run(["records", "check", "one.json", "two.json"], {
      "one.json": SITTING,
      "two.json": forged,
    });
    expect(out).toMatch(/^one\.json: sitting: Two locks, three questions; Mibsy; .*; passed; sheet .*; 0 of 5 tries/);
    expect(out).toContain("  ! The file says passed (result); its record says failed.\n");
  });

  test("recordings that come under two names are named, over all files", async () => {
    const copied = LOGBOOK.replaceAll("Mibsy", "Tavro").replaceAll(
      JSON.parse(LOGBOOK).people[0].id,
      "00000000-0000-4000-8000-00000000c0de",
    );
    const { status, out } = await run(["records", "check", "one.json", "two.json", "--json"], {
      "one.json": LOGBOOK,
      "two.json": copied,
    });
    expect(status).toBe(1);
    expect(out).toMatch(/\{"copy":"Mibsy and Tavro: /);
  });
});
