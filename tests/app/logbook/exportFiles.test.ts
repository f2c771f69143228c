import { expect, test } from "vitest";
import { EXPORTS, exportFile } from "../../../src/app/logbook/exportFiles";
import { readLogbookFile } from "../../../src/logbook/logbookFile";
import { anAttempt, aPerson, contents, NOON } from "../../support/logbookRecords";

const logbook = contents(
  [aPerson("tavro"), aPerson("mibsy")],
  [anAttempt("a"), anAttempt("b", { personId: "mibsy" }), anAttempt("c", { profileId: "elsewhere" })],
);

test.each(EXPORTS)("$label has a name with person and time, and tells what is in it", ({ kind }) => {
  const file = exportFile(kind, logbook, null, NOON);
  expect(file.name).toMatch(/^gatefall-[a-z]+-2026-11-\d\d-\d{4}\.[a-z]+$/);
  expect(exportFile(kind, logbook, "mibsy", NOON).name).toMatch(
    /^gatefall-[a-z]+-[mM]ibsy-2026-11-\d\d-\d{4}\.[a-z]+$/,
  );
  expect(file.told).toMatch(/^Saved \d+ /);
});

test("a whole logbook can be read back, and one person's part has nobody else in it", () => {
  const all = readLogbookFile(exportFile("logbook", logbook, null, NOON).text);
  expect(all.records.attempts).toHaveLength(3);
  const own = readLogbookFile(exportFile("logbook", logbook, "mibsy", NOON).text);
  expect(own.records.people.map(({ id }) => id)).toEqual(["mibsy"]);
  expect(own.records.attempts.map(({ id }) => id)).toEqual(["b"]);
});

test("replay lines tell what was left out", () => {
  expect(exportFile("replay", logbook, null, NOON).told).toMatch(/^Saved 2 attempts\. 1 left out/);
});
