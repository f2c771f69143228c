import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { Logbook } from "../../src/store/logbook";
import { LogbookDatabase } from "../../src/store/logbookDatabase";
import { recordsOfKind } from "../../src/store/wholeLogbook";
import { aPerson, emptyHost } from "../support/logbookRecords";

beforeAll(() => {
  for (const [name, value] of Object.entries(emptyHost())) vi.stubGlobal(name, value);
});
afterAll(() => vi.unstubAllGlobals());

test("a logbook in the browser's own database is there again after the page is closed", async () => {
  const first = new Logbook(new LogbookDatabase());
  await first.open();
  await first.save({ kind: "people", record: aPerson("tavro") });
  first.close();
  const second = new Logbook(new LogbookDatabase());
  await second.open();
  expect(await recordsOfKind(second, "people")).toMatchObject([aPerson("tavro")]);
  second.close();
});
