import { expect, test } from "vitest";
import { EXPORTS, exportFile, exportFileInSlices } from "../../../../src/app/logbook/files/exportFiles";
import { readLogbookFile } from "../../../../src/records/file/logbookFile";
import { keptSitting } from "../../../support/keptRecord";
import { anAttempt, aPerson, contents, NOON } from "../../../support/logbookRecords";

const logbook = contents(
  [aPerson("tavro"), aPerson("mibsy")],
  [anAttempt("a"), anAttempt("b", { personId: "mibsy" }), anAttempt("c", { profileId: "elsewhere" })],
);

test.each(EXPORTS)("$label has a name with person and time, and tells what is in it", ({ kind }) => {
  const file = exportFile(kind, logbook, { personId: null, now: NOON });
  expect(file.name).toMatch(/^gatefall-[a-z]+-2026-11-\d\d-\d{4}\.[a-z]+$/);
  const own = exportFile(kind, logbook, { personId: "mibsy", now: NOON });
  // What the columns mean is of nobody.
  const person = kind === "dictionary" ? "" : "mibsy-";
  expect(own.name).toMatch(new RegExp(`^gatefall-[a-z]+-${person}2026-11-\\d\\d-\\d{4}\\.[a-z]+$`));
  expect(file.told).toMatch(/^Saved \d+ /);
});

test("a whole logbook can be read back, and one person's part has nobody else in it", () => {
  const all = readLogbookFile(exportFile("logbook", logbook, { personId: null, now: NOON }).text);
  expect(all.records.attempts).toHaveLength(3);
  const own = readLogbookFile(exportFile("logbook", logbook, { personId: "mibsy", now: NOON }).text);
  expect(own.records.people.map(({ id }) => id)).toEqual(["mibsy"]);
  expect(own.records.attempts.map(({ id }) => id)).toEqual(["b"]);
});

test("statements check one sitting after the other, tell how far it is, and let the page work in between", async () => {
  const sittings = [keptSitting("s1"), keptSitting("s2"), keptSitting("s3")];
  const book = { ...logbook, records: { ...logbook.records, sittings } };
  const setting = { personId: null, now: NOON };
  const told: string[] = [];
  const sliced = await exportFileInSlices("xapi", book, setting, (progress) => {
    told.push(progress);
    setTimeout(() => told.push("the page worked"), 0);
  });
  expect(told).toEqual([1, 2, 3].flatMap((place) => [`Checking sitting ${place} of 3 …`, "the page worked"]));
  expect(sliced).toEqual(exportFile("xapi", book, setting));
});

test("replay lines tell what was left out", () => {
  expect(exportFile("replay", logbook, { personId: null, now: NOON }).told).toMatch(/^Saved 2 attempts\. 1 left out/);
});

test("CSV files bear a byte order mark where it is asked for, and nothing else does", () => {
  const marked = (kind: (typeof EXPORTS)[number]["kind"], csv: "plain" | "marked") =>
    exportFile(kind, logbook, { personId: null, now: NOON, csv }).text.startsWith("\uFEFF");
  const csvs = EXPORTS.filter(({ label }) => label.endsWith("CSV"));
  expect(csvs).toHaveLength(5);
  for (const { kind } of EXPORTS) {
    expect(marked(kind, "plain")).toBe(false);
    expect(marked(kind, "marked")).toBe(csvs.some((one) => one.kind === kind));
  }
});
