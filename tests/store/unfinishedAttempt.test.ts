import { csvParse } from "d3-dsv";
import { expect, test } from "vitest";
import { classTable } from "../../src/progress/classTable";
import { attemptsCsv } from "../../src/records/csv/attemptsCsv";
import { readLogbookFile, writeLogbookFile } from "../../src/records/file/logbookFile";
import { joinContents } from "../../src/records/logbookContents";
import { decodeTrace, encodeTrace } from "../../src/records/motion/traceCodec";
import { xapiStatements } from "../../src/records/xapi/xapiStatements";
import { allAttempts, attemptPage, countAttempts, motionOf } from "../../src/store/attemptQueries";
import { dropUnfinished, mergeIntoLogbook } from "../../src/store/wholeLogbook";
import { anAttempt, aPerson, contents, NOON, openLogbook, SHORT_TRACE } from "../support/logbookRecords";

const LONGER = encodeTrace({ start: { dial: 12.5 }, positions: [12.5, 20, 31.25, 90], times_ms: [0, 16, 33, 50] });

const unfinished = anAttempt("u", { opened: false, isUnfinished: true, stops: [] });
const finished = { ...anAttempt("u"), updatedAt: NOON + 1 };
const book = contents([aPerson("tavro")], [unfinished, anAttempt("a"), anAttempt("m", { opened: false })]);

test("is listed, and is neither a miss nor part of any statistic", async () => {
  const logbook = await openLogbook();
  await mergeIntoLogbook(logbook, book);
  const filter = { personId: "tavro" };
  const listed = (await attemptPage(logbook, filter, 9)).attempts.map(({ id }) => id);
  expect(listed.toSorted()).toEqual(["a", "m", "u"]);
  expect((await attemptPage(logbook, { ...filter, onlyMisses: true }, 9)).attempts.map(({ id }) => id)).toEqual(["m"]);
  expect(await countAttempts(logbook, { ...filter, onlyMisses: true })).toBe(1);
  expect((await allAttempts(logbook, filter)).map(({ id }) => id).toSorted()).toEqual(["a", "m"]);
  const [row] = classTable([book]).rows;
  expect(row?.cells[0]?.attempts).toBe(2);
});

test("is told as such in every export", () => {
  const again = readLogbookFile(writeLogbookFile(book, NOON));
  expect(again.records.attempts).toContainEqual(unfinished);
  const told = new Map(csvParse(attemptsCsv(book)).map((row) => [row.attempt ?? row.id ?? "", row.unfinished]));
  expect(told).toEqual(
    new Map([
      ["a", "0"],
      ["m", "0"],
      ["u", "1"],
    ]),
  );
  const results = xapiStatements(book, "0.1.0").map(({ result }) => result);
  expect(results).toContainEqual(expect.objectContaining({ completion: false }));
  expect(results.filter((result) => result !== undefined && "success" in result)).toHaveLength(2);
});

test("gives way to its end, motion and all, whichever comes first from two logbooks", async () => {
  const [early, late] = [contents([aPerson("tavro")], [unfinished]), contents([aPerson("tavro")], [finished])];
  const longer = { ...late, traces: new Map([["u", LONGER]]) };
  for (const parts of [
    [early, longer],
    [longer, early],
  ]) {
    const joined = joinContents(parts);
    expect(joined.records.attempts).toEqual([finished]);
    expect(joined.traces.get("u")).toBe(LONGER);
  }
  const logbook = await openLogbook();
  await logbook.save({ kind: "attempts", record: unfinished, trace: SHORT_TRACE });
  await logbook.save({ kind: "attempts", record: finished, trace: LONGER });
  expect(await motionOf(logbook, "u")).toEqual(decodeTrace(LONGER));
  expect(await countAttempts(logbook, { personId: "tavro" })).toBe(1);
});

test("goes with its motion when it is put away, stored or waiting", async () => {
  const logbook = await openLogbook();
  await logbook.save({ kind: "attempts", record: unfinished, trace: SHORT_TRACE });
  await dropUnfinished(logbook, "u");
  expect(await countAttempts(logbook, { personId: "tavro" })).toBe(0);
  expect(await motionOf(logbook, "u")).toBeUndefined();
  logbook.close();
  await logbook.save({ kind: "attempts", record: unfinished, trace: SHORT_TRACE });
  await dropUnfinished(logbook, "u");
  expect(logbook.pending).toEqual([]);
});

test("records that belong together are kept together or not at all", async () => {
  const logbook = await openLogbook();
  const bad = { kind: "people" as const, record: aPerson("x", { name: "" }) };
  await expect(logbook.save({ kind: "attempts", record: finished }, bad)).rejects.toThrow(
    "name must be a text of 1 to 100",
  );
  expect(await countAttempts(logbook, { personId: "tavro" })).toBe(0);
  expect(logbook.pending).toEqual([]);
});
