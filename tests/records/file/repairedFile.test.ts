import { deflateSync } from "fflate";
import { describe, expect, test } from "vitest";
import { readLogbookFile, writeLogbookFile } from "../../../src/records/file/logbookFile";
import { FileError, fileSentences } from "../../../src/records/fileWords";
import { toBase64 } from "../../../src/records/motion/base64";
import { mergeIntoLogbook, recordsOfKind } from "../../../src/store/wholeLogbook";
import { aJob, anAttempt, aPerson, contents, NOON, openLogbook, theirPeople } from "../../support/logbookRecords";

/* One bad record must not cost the others: what is sound is taken, what can be repaired is, and the rest is named. */

const whole = JSON.parse(writeLogbookFile(contents(theirPeople, [anAttempt("good")]), NOON));
const readText = (text: string) => {
  const { remarks, ...contents } = readLogbookFile(text);
  return { ...contents, remarks: fileSentences(remarks) };
};
const read = (other: object) => readText(JSON.stringify({ ...whole, ...other }));
const attempts = (...list: unknown[]) => read({ attempts: [...whole.attempts, ...list] });
const nested = (levels: number) =>
  readText(
    JSON.stringify({ ...whole, sheets: [] }).replace(
      '"sheets":[]',
      `"sheets":[{"id":"x","createdAt":1,"updatedAt":1,"title":"x","body":${"[".repeat(levels)}${"]".repeat(levels)}}]`,
    ),
  );

test("a sound file is taken without a remark", () => {
  expect(read({}).remarks).toEqual([]);
});

describe("a record that cannot be read is left out and named, the others are taken", () => {
  test.each([
    [
      "an attempt without an outcome",
      { ...anAttempt("bad"), opened: 1 },
      "attempts[1] (id bad) is left out: opened must be true or false, not 1.",
    ],
    ["an attempt that is none", 7, "attempts[1] is left out: this must be an object, not 7."],
    ["a time before all times", { ...anAttempt("bad"), startedAt: -1 }, "startedAt must be a time"],
  ])("%s", (_what, one, words) => {
    const { records, remarks } = attempts(one);
    expect(records.attempts.map(({ id }) => id)).toEqual(["good"]);
    expect(remarks).toEqual([expect.stringContaining(words)]);
  });

  test.each([
    ["a job of no kind", { jobs: [{ ...aJob("a"), kind: "repair" }] }, 'kind must be "change", "trouble"'],
    [
      "a job that missed what is no code",
      { jobs: [aJob("a", { missed: ["Way Out"] })] },
      "missed[0] must be a name in small letters",
    ],
    ["a list that is none", { zeroings: {} }, "zeroings is left out: it must be a list."],
  ])("%s", (_what, other, words) => {
    const { records, remarks } = read(other);
    expect([records.attempts.length, records.jobs, records.zeroings]).toEqual([1, [], []]);
    expect(remarks).toEqual([expect.stringContaining(words)]);
  });

  test.each([60, 5000, 100_000])("a body of %d levels", (levels) => {
    const { records, remarks } = nested(levels);
    expect([records.sheets.length, records.attempts.length]).toEqual([0, 1]);
    expect(remarks).toEqual([
      expect.stringMatching(/^sheets\[0\].* is left out: .*(at most 40 levels|nested too deep)/),
    ]);
  });

  test("thousands of them are counted, and the first ones named", () => {
    const { remarks } = attempts(...Array.from({ length: 1000 }, () => 0));
    expect(remarks).toHaveLength(201);
    expect(remarks.at(-1)).toBe("And 800 more.");
  });
});

describe("what can be repaired is", () => {
  test.each([
    ["no base64", "§§", "This motion cannot be read: it is not written in base64."],
    ["no trace", "AQAA", "This motion cannot be read"],
    ["no text", 5, "it is not a text."],
  ])("an attempt whose motion is %s comes without it", (_what, trace, words) => {
    const { records, traces, remarks } = attempts({ ...anAttempt("bare"), trace });
    expect(records.attempts.map(({ id }) => id)).toEqual(["good", "bare"]);
    expect([...traces.keys()]).toEqual(["good"]);
    expect(remarks).toEqual([expect.stringContaining("attempts[1] (id bare) is taken without its motion.")]);
    expect(remarks[0]).toContain(words);
  });

  test("of two records with one id the one written more often, or later, is taken", () => {
    const { records, remarks } = attempts(
      anAttempt("good", { note: "more often", revision: 2, updatedAt: NOON - 9 }),
      anAttempt("good", { note: "later", updatedAt: NOON + 9 }),
    );
    expect(records.attempts).toMatchObject([{ id: "good", note: "more often" }]);
    expect(remarks).toHaveLength(2);
    expect(remarks[0]).toContain('attempts[1] has the same id as another record, "good"');
  });

  test("records of nobody come under a name that says so, and under the right one where the person is known", async () => {
    const file = read({ people: [], jobs: [aJob("j", { personId: "f00dcafe" })] });
    expect(file.records.people.map(({ name }) => name)).toEqual(["Unknown person tavro", "Unknown person f00dca"]);
    expect(file.remarks[0]).toContain('records of a person with the id "tavro"');
    const logbook = await openLogbook();
    await logbook.save({ kind: "people", record: aPerson("tavro", { name: "Tavro Eln" }) });
    await mergeIntoLogbook(logbook, file);
    const people = await recordsOfKind(logbook, "people");
    expect(people.map(({ name }) => name).sort()).toEqual(["Tavro Eln", "Unknown person f00dca"]);
  });
});

describe("a file that would fill the memory", () => {
  const HUGE = deflateSync(new Uint8Array(134_000_000), { level: 9 });

  /** A trace whose motion unpacks to far more than it weighs. @param stated_bytes - what it says of itself */
  function bomb(packed: Uint8Array, stated_bytes: number): string {
    const bytes = new Uint8Array(5 + packed.length);
    bytes[0] = 1;
    new DataView(bytes.buffer).setUint32(1, stated_bytes, true);
    bytes.set(packed, 5);
    return toBase64(bytes);
  }

  test("is read in bounded room: no motion may unpack to more than any hand makes", () => {
    const trace = bomb(HUGE, 134_000_000);
    const before = process.memoryUsage().rss;
    const list = Array.from({ length: 10 }, (_, k) => ({ ...anAttempt(`b${k}`), trace }));
    const { records, traces, remarks } = attempts(...list);
    expect([records.attempts.length, traces.size, remarks.length]).toEqual([11, 1, 10]);
    expect(process.memoryUsage().rss - before, "bytes that it took").toBeLessThan(150e6);
  });

  test("is read in bounded room where it lies about its size", () => {
    const { remarks } = attempts({ ...anAttempt("liar"), trace: bomb(HUGE, 1000) });
    expect(remarks).toEqual([expect.stringContaining("is taken without its motion.")]);
  });

  test("gets room by its own size: many motions that each fit are left out when all together do not", () => {
    const trace = bomb(deflateSync(new Uint8Array(7_000_000), { level: 9 }), 7_000_000);
    const list = Array.from({ length: 10 }, (_, k) => ({ ...anAttempt(`b${k}`), trace }));
    const { remarks } = attempts(...list);
    expect(remarks.filter((one) => one.includes("unpack to far more than its size")).length).toBeGreaterThan(0);
  });

  test("is refused with a sentence where a list is far too long", () => {
    const text = JSON.stringify({ ...whole, sheets: [] }).replace('"sheets":[]', `"sheets":[${"0,".repeat(200_000)}0]`);
    expect(() => readLogbookFile(text)).toThrow(FileError);
    expect(() => readLogbookFile(text)).toThrow("has more than 200000 sheets, and no more can be read");
  });
});
