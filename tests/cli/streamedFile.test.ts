import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { withProgress } from "../../src/cli/records/progress";
import { StreamedFile } from "../../src/cli/records/streamedFile";
import { harmlessText } from "../../src/lock/harmlessText";
import { readLogbookFile } from "../../src/records/file/logbookFile";
import { LogbookReading } from "../../src/records/file/logbookReading";
import { fakeTerminal, run } from "./fakeTerminal";

const LOGBOOK = readFileSync("tests/fixtures/0.2.0/logbook.json", "utf8");
const FILE: Readonly<Record<string, unknown>> = JSON.parse(LOGBOOK);
const SITTING = readFileSync("tests/fixtures/0.2.0/sitting-passed.json", "utf8");

/** A file that comes in pieces of some bytes. */
async function* cut(text: string, size: number) {
  const bytes = Buffer.from(text);
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

async function streamed(pieces: AsyncIterable<Uint8Array>) {
  const source = new StreamedFile("a.json");
  const reading = new LogbookReading(() => source.bytes);
  const root = await source.read({ ...fakeTerminal({}), pieces: () => pieces }, reading);
  return { root, read: () => reading.end(root) };
}

const inOrder = (keys: readonly string[]) => JSON.stringify(Object.fromEntries(keys.map((key) => [key, FILE[key]])));

describe("a logbook that is read record by record", () => {
  test.each([
    { why: "as it was written", text: LOGBOOK },
    { why: "with its lists in another order", text: inOrder(Object.keys(FILE).toReversed()) },
    { why: "with spaces", text: JSON.stringify(FILE, null, 2) },
    { why: "without lists", text: '{"format": "gatefall-logbook", "version": 2}' },
    { why: "with lists that are none", text: JSON.stringify({ ...FILE, jobs: {}, people: 5 }) },
    { why: "with records that are none", text: JSON.stringify({ ...FILE, jobs: [1, null, {}, [[]]] }) },
  ])("$why is what the page reads", async ({ text }) => {
    const page = readLogbookFile(text);
    for (const size of [17, 4096, text.length]) {
      const { read } = await streamed(cut(text, size));
      const { remarks, ...contents } = read();
      expect(contents).toEqual({ records: page.records, traces: page.traces });
      expect(new Set(remarks)).toEqual(new Set(page.remarks));
    }
  });

  test("leaves nothing of its lists in memory", async () => {
    const { root } = await streamed(cut(LOGBOOK, 4096));
    expect(root).toMatchObject({ format: "gatefall-logbook", people: [], attempts: [], sittings: [] });
  });

  test("is checked alike, whatever comes first", async () => {
    const check = (text: string) => run(["records", "check", "a.json", "--json"], { "a.json": text });
    const reversed = await check(inOrder(Object.keys(FILE).toReversed()));
    expect(reversed).toEqual(await check(LOGBOOK));
  });

  test("shows how far it is", async () => {
    const told: string[] = [];
    const terminal = { ...fakeTerminal({ "a.json": LOGBOOK }), pieces: () => cut(LOGBOOK, LOGBOOK.length / 2 + 1) };
    const showing = withProgress({ ...terminal, progress: (text: string) => told.push(text) }, "file 1 of 1");
    await new StreamedFile("a.json").read(showing, { record() {}, noList() {} });
    expect(told).toEqual(["file 1 of 1: 0 % of 1 MB", "file 1 of 1: 50 % of 1 MB"]);
  });
});

describe("a file that nobody means well with gets status 2 and a sentence that says where", () => {
  const list = LOGBOOK.indexOf('"attempts":[');
  const DEEP = "[".repeat(100_000);
  test.each([
    { why: "nothing", text: "", says: "a.json ends too soon, at byte 0 (last whole part: none)" },
    {
      why: "a truncated list",
      text: LOGBOOK.slice(0, list + 2000),
      says: `at byte ${list + 2000} (last whole part: attempts[1])`,
    },
    { why: "a truncated sitting", text: SITTING.slice(0, 500), says: "ends too soon, at byte 500" },
    { why: "a text that does not end", text: '{"format": "gatef', says: "ends too soon, at byte 17" },
    { why: "NUL bytes", text: "\0".repeat(100), says: "is not JSON after byte 0 (last whole part: none)" },
    {
      why: "a NUL in a text",
      text: LOGBOOK.replace('"three-wheel"', '"three\0wheel"'),
      says: "is not JSON after byte",
    },
    { why: "two values", text: `${LOGBOOK}{}`, says: `is not JSON after byte ${LOGBOOK.length}` },
    { why: "a missing comma", text: LOGBOOK.replace(',"attempts"', '"attempts"'), says: "(last whole part: people)" },
    { why: "deep nesting", text: DEEP, says: "is nested more than 100 deep" },
    { why: "deep nesting in a record", text: `{"sheets":[{"body":${DEEP}`, says: "is nested more than 100 deep" },
    { why: "a list twice", text: '{"people": [], "people": []}', says: 'has the list "people" twice' },
    { why: "a name that acts", text: '{"\u202e\u001b": 1, oops', says: "(last whole part:" },
  ])("$why", async ({ text, says }) => {
    for (const command of [["records", "check"], ["class"]]) {
      const { status, out, complaints } = await run([...command, "a.json"], { "a.json": text });
      expect({ status, out, complaints }).toEqual({ status: 2, out: "", complaints: [expect.stringContaining(says)] });
      expect(harmlessText(complaints.join())).toBe(complaints.join());
    }
  });

  /** Megabyte after megabyte of one letter, and no end. */
  async function* endless(begin: string, filling: string) {
    yield Buffer.from(begin);
    for (;;) yield Buffer.alloc(1_000_000, filling);
  }

  test.each([
    { why: "a text without end", begin: '{"people": ["', filling: "a" },
    { why: "a record without end", begin: '{"people": [[', filling: "0," },
    { why: "spaces without end", begin: "{", filling: " " },
  ])("$why is given up", { timeout: 120_000 }, async ({ begin, filling }) => {
    await expect(streamed(endless(begin, filling))).rejects.toThrow("has more than 16 MB that is no list of records");
  });

  test("a list that is far too long, with what the page says of it", async () => {
    const { status, complaints } = await run(["class", "a.json"], {
      "a.json": `{"format":"gatefall-logbook","version":1,"sheets":[${"0,".repeat(200_000)}0]}`,
    });
    expect([status, complaints]).toEqual([2, [expect.stringContaining("has more than 200000 sheets")]]);
  });
});
