import { expect, test } from "vitest";
import { draftBody } from "../../src/app/keeping/sheets/readDraft";
import { blankSheet } from "../../src/app/sheets/editor/newSheet";
import type { SheetRecord } from "../../src/records/records";
import { dropSheet, recordsOfKind } from "../../src/store/wholeLogbook";
import { openLogbook } from "../support/logbookRecords";

const body = draftBody(blankSheet()) as SheetRecord["body"];

test("a sheet, which is nobody's, is stored, and stored again", async () => {
  const logbook = await openLogbook();
  for (const title of ["first", "second"]) {
    const record = { id: "a", title, createdAt: 1, updatedAt: 2, body };
    expect(await logbook.save({ kind: "sheets", record })).toMatchObject({ isStored: true });
  }
  expect(await logbook.read((database) => database.sheets.toArray(), [])).toMatchObject([{ title: "second" }]);
});

test.each([true, false])("a sheet is forgotten, be it stored or pending (%s)", async (isStored) => {
  const logbook = await openLogbook();
  if (!isStored) logbook.close();
  const record = { title: "one", createdAt: 1, updatedAt: 2, body };
  const saved = await logbook.save(
    { kind: "sheets", record: { ...record, id: "a" } },
    { kind: "sheets", record: { ...record, id: "b" } },
  );
  expect(saved.isStored).toBe(isStored);
  await dropSheet(logbook, "a");
  expect((await recordsOfKind(logbook, "sheets")).map(({ id }) => id)).toEqual(["b"]);
});
