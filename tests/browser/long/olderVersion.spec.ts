import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import addresses from "../../fixtures/0.2.0/addresses.json" with { type: "json" };
import { rows4, TABLES_4 } from "../../support/database4";
import { rawDatabase } from "../../support/rawDatabase";
import { expect, test } from "../page";

/* Everything that version 0.2.0 left on a disk, in an address or in the browser, opened by this version. */

const fixture = (name: string) => `tests/fixtures/0.2.0/${name}`;
const person = (page: Page, name: string) =>
  page.getByRole("group", { name: "Who practices" }).getByRole("button", { name });
const attempts = (page: Page) => page.getByRole("button", { name: /^Replay the attempt of/ });
const jobs = (page: Page) => page.getByRole("table", { name: /^Jobs/ }).locator("tbody tr");
const sittings = (page: Page) => page.getByRole("table", { name: "Sittings, latest first" }).locator("tbody tr");

/** Leaves the rows of version 0.2.0 in the browser's database, before this version's page is there. */
async function leaveDatabase(page: Page): Promise<void> {
  await page.goto("icon.svg");
  const { traces, ...rows } = rows4();
  const bytes = traces.map((trace) => ({ ...trace, bytes: [...trace.bytes] }));
  await page.evaluate(`{
    const traces = ${JSON.stringify(bytes)}.map((trace) => ({ ...trace, bytes: Uint8Array.from(trace.bytes) }));
    const rows = { ...${JSON.stringify(rows)}, traces };
    (${rawDatabase})(globalThis, "gatefall-logbook", 40, ${JSON.stringify(TABLES_4)}, rows).then((it) => it.close());
  }`);
}

test("the browser's database of version 0.2.0: its people, attempts with their motion, jobs and sheets are there", async ({
  page,
}) => {
  await leaveDatabase(page);
  await page.goto("./#/logbook");
  await person(page, "Ondrell").click();
  await expect(attempts(page)).toHaveCount(4);
  await attempts(page).last().click();
  await expect(page.getByRole("slider", { name: "Time in the replay" })).toBeVisible();
  await page.goto("./#/logbook?view=jobs");
  await expect(jobs(page)).toHaveCount(3);
  await page.goto("./#/sheets");
  await expect(page.getByText("Own sheet")).toBeVisible();
});

test("a logbook file of version 0.2.0 is imported whole: attempts replay, sittings check", async ({ page }) => {
  await page.goto("#/logbook?view=files");
  await page.locator("input[type=file]").setInputFiles(fixture("logbook.json"));
  await expect(page.getByText(/records added/)).toBeVisible();
  await page.getByRole("link", { name: "Attempts" }).click();
  await expect(attempts(page)).toHaveCount(8);
  await attempts(page).first().click();
  await expect(page.getByRole("slider", { name: "Time in the replay" })).toBeVisible();
  await page.goto("#/logbook?view=sittings");
  await expect(sittings(page)).toHaveText([/Every kind of job.*Not passed/, /Two locks, three questions.*Passed/]);
});

test("the class desk takes a logbook file of version 0.2.0", async ({ page }) => {
  await page.goto("#/desk");
  await page.locator("input[type=file]").setInputFiles(fixture("logbook.json"));
  await expect(page.getByRole("table", { name: "People by skills" })).toContainText("Mibsy");
});

for (const [name, says] of [
  ["sitting-passed.json", "resultpassed"],
  ["sitting-failed.json", "resultnot passed"],
] as const) {
  test(`${name} of version 0.2.0 does not fail its check`, async ({ page }) => {
    await page.goto("#/sittings");
    const check = page.getByRole("region", { name: "Check a record" });
    await check.getByLabel("Load a file").setInputFiles(fixture(name));
    await expect(check.getByLabel("What the record says")).toContainText(says);
    await expect(check.getByRole("alert")).toHaveCount(0);
  });
}

test("a handover record of version 0.2.0 is sound", async ({ page }) => {
  await page.goto("#/handover?view=record");
  const check = page.getByRole("region", { name: "Check a record" });
  await check.getByLabel("Load a file").setInputFiles(fixture("handover.json"));
  await expect(check.getByRole("status")).toHaveText(/^The record is sound\./);
});

test("an attempt of version 0.2.0 in the replay format is loaded at the bench", async ({ page }) => {
  await page.goto("#/bench");
  await page.getByRole("button", { name: "Share", exact: true }).click();
  const [line = ""] = readFileSync(fixture("attempts.jsonl"), "utf8").split("\n");
  await page.getByRole("textbox", { name: "A recorded attempt to load" }).fill(line);
  await page.getByRole("button", { name: "Load and replay" }).click();
  await expect(page.getByRole("slider", { name: "Time in the replay" })).toBeVisible();
});

test("a drill sheet of version 0.2.0 opens from its file and from both links", async ({ page }) => {
  await page.goto("#/sheets");
  await page.getByLabel("Load a file").setInputFiles(fixture("sheet.json"));
  await expect(page.getByRole("textbox", { name: "Title", exact: true })).toHaveValue("A week of everything");
  await expect(page.getByRole("article")).toContainText("Warm up");
  await page.goto(addresses.sheet);
  await expect(page.getByRole("article")).toContainText("A week of everything");
  await page.goto(addresses.sitting);
  await expect(page.locator("main header")).toContainText("A week of everything");
  await expect(page.getByRole("button", { name: "I have read it" })).toBeEnabled();
});

test("addresses of version 0.2.0 set up what they did", async ({ bench, page }) => {
  await page.goto(addresses.benchOwn);
  await expect(bench.dial).toBeVisible();
  await expect(page.locator("main")).toContainText(/74.{1,5}37/);
  await page.goto(addresses.benchAsSet);
  await expect(page.locator("main")).toContainText("encoder");
  for (const [address, view] of [
    [addresses.change, "Change"],
    [addresses.trouble, "Trouble"],
    [addresses.handover, "Handover"],
  ] as const) {
    await page.goto(address);
    const parts = page.getByRole("navigation", { name: "Parts of the handover" });
    await expect(parts.getByRole("link", { name: new RegExp(view, "i") })).toHaveAttribute("aria-current", "page");
  }
});
