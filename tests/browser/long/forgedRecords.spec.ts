import { DEMO_SEED, demoLogbook } from "../../../src/progress/demo/demoLogbook";
import { writeLogbookFile } from "../../../src/records/file/logbookFile";
import { recordHash } from "../../../src/records/hashedRecord";
import { contentsOf } from "../../../src/records/logbookContents";
import { keptSitting } from "../../support/keptRecord";
import { aPerson, contents, NOON } from "../../support/logbookRecords";
import { satRecord } from "../../support/satRecord";
import { triesRight } from "../../support/testTries";
import { expect, test } from "../page";

/** The logbook of Mibsy, whose failed sitting the file calls passed, and another whose record was changed. */
async function forgedBook() {
  const demo = demoLogbook(DEMO_SEED, NOON);
  const person = demo.records.people.find(({ name }) => name === "Mibsy");
  if (person === undefined) throw new Error("the demo has no Mibsy");
  const { isDemo: _, ...mibsy } = person;
  const { records, traces } = contentsOf(new Set([mibsy.id]), demo);
  const failed = keptSitting("s1", { person: "Mibsy", tries: triesRight(1, 5) });
  const beside = { ...failed, personId: mibsy.id, verdict: "passed" as const };
  const changed = JSON.parse(JSON.stringify(failed.body).replaceAll('"opened":false', '"opened":true'));
  const sittings = [
    { ...beside, title: "The hard sheet" },
    { ...beside, id: "s2", body: changed },
  ];
  const text = writeLogbookFile({ records: { ...records, people: [mibsy], sittings }, traces }, NOON);
  return { name: "class.json", mimeType: "application/json", buffer: Buffer.from(text) };
}

test("the check screen says what a record holds, and has no result for a forged one", async ({ page }) => {
  const record = satRecord();
  const file = async (one: object) => JSON.stringify({ sha256: recordHash(one as never), record: one });
  await page.goto("#/sittings");
  const check = page.getByRole("region", { name: "Check a record" });
  const checkIt = async (text: string) => {
    await check.getByRole("textbox").fill(text);
    await check.getByRole("button", { name: "Check it" }).click();
  };
  await checkIt(await file(record));
  await expect(check.getByRole("status")).toHaveText(/^The record is sound/);
  for (const words of [/result\s*not passed/, /sheet\s*A sheet/, /person\s*Tavro/, /reloads\s*0/, /4 replayed/]) {
    await expect(check.locator("dl")).toHaveText(words);
  }
  const opened = { ...record.tries[1], opened: true, stopErrors: [0, 0, 0], faults: [] };
  await checkIt(await file({ ...record, tries: record.tries.with(1, opened as never) }));
  await expect(check.getByRole("alert")).toContainText("Try 2 is recorded as opened, but its recording does not open");
  await expect(check.locator("dl")).toHaveText(/result\s*none: the record fails its check/);
  await checkIt(await file({ ...record, tries: [null] }));
  await expect(check.getByRole("alert")).toHaveText(/^Not checked: record\.tries\[0\] must have a kind/);
});

test("the check screen names recordings that are another attempt's in this browser", async ({ page }) => {
  const record = satRecord();
  const file = async (one: object) => ({ sha256: recordHash(one as never), record: one });
  const body = (await file(record)) as never;
  const stamps = { createdAt: NOON, updatedAt: NOON, startedAt: NOON };
  const own = { id: "s1", ...stamps, personId: "tavro", title: record.sheet.title, state: "finished" as const, body };
  const book = contents([aPerson("tavro", { name: "Tavro" })], []);
  const text = writeLogbookFile({ ...book, records: { ...book.records, sittings: [own] } }, NOON);
  await page.goto("#/logbook?view=files");
  await page
    .locator("input[type=file]")
    .setInputFiles({ name: "book.json", mimeType: "application/json", buffer: Buffer.from(text) });
  await expect(page.getByText(/2 records added/)).toBeVisible();
  await page.goto("#/sittings");
  const check = page.getByRole("region", { name: "Check a record" });
  const checkIt = async (one: object) => {
    await check.getByRole("textbox").fill(JSON.stringify(await file(one)));
    await check.getByRole("button", { name: "Check it" }).click();
  };
  await checkIt(record);
  await expect(check.getByRole("status")).toHaveText(/^The record is sound/);
  await checkIt({ ...record, person: "Somebody else" });
  await expect(check.getByRole("alert")).toContainText(
    "the same recording, to the last move, as another attempt in this logbook (Tavro). One of them is a copy.",
  );
});

test("the desk shows what the records say, and names what the file says beside them", async ({ page }) => {
  await page.goto("#/desk");
  await page.locator("input[type=file]").setInputFiles(await forgedBook());
  await page.getByRole("button", { name: /More of Mibsy, Three-wheel, open/ }).click();
  const details = page.getByRole("dialog", { name: "Mibsy" });
  await expect(details.getByRole("row", { name: /A sheet .* not passed 0 0 differs from its file$/ })).toBeVisible();
  await expect(details.getByRole("row", { name: /none 0 0 fails its check$/ })).toBeVisible();
  await details.getByText(/: differs from its file$/).click();
  await expect(details.getByText("The file says passed (result); its record says failed.").first()).toBeVisible();
});

test("the logbook lists what the records say, and has no result for one that does not check", async ({ page }) => {
  await page.goto("#/logbook?view=files");
  await page.locator("input[type=file]").setInputFiles(await forgedBook());
  await expect(page.getByText(/records added/)).toBeVisible();
  await page.goto("#/logbook?view=sittings");
  const rows = page.getByRole("table", { name: "Sittings, latest first" }).locator("tbody tr");
  await expect(rows).toHaveCount(2);
  await expect(rows.filter({ hasText: /A sheet.*Not passed/ })).toHaveCount(1);
  await expect(rows.filter({ hasText: "No result: the record fails its check" })).toHaveCount(1);
  await expect(page.getByText("The hard sheet")).toHaveCount(0);
  await rows.filter({ hasText: "Not passed" }).getByRole("button").click();
  await expect(page.getByText("The file says passed (result); its record says failed.")).toBeVisible();
});
