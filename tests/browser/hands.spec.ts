import type { Page } from "@playwright/test";
import { handsBook, handsClass } from "../support/handsBook";
import { violations } from "./axe";
import { expect, test } from "./page";

const FILE = { name: "Tavro.json", mimeType: "application/json", buffer: Buffer.from(handsBook()) };

/** Puts the logbook of several hands into this browser, and comes to its progress. */
async function progress(page: Page) {
  await page.goto("#/logbook?view=files");
  await page.locator("input[type=file]").setInputFiles(FILE);
  await expect(page.getByText(/records added/)).toBeVisible();
  await page.getByRole("link", { name: "Progress" }).click();
}

const carries = (page: Page) => page.getByRole("region", { name: "Does it carry over?" });

test("progress compares hands with intervals, says where there is too little, and shows the figures of one at a time", async ({
  page,
}) => {
  await progress(page);
  const turnedBy = page.getByRole("combobox", { name: "Turned by" });
  await expect(turnedBy).toHaveValue("screen");
  await expect(page.getByText("Only what was turned this way counts in the figures here.")).toBeVisible();
  await expect(carries(page).getByRole("paragraph")).toContainText([
    /^Printed dial: your worst stop is larger than on the screen\. Practice there too\.$/,
    /^Encoder: too few attempts to compare\. You need two with stops there, and two on the screen\.$/,
    /^MIDI knob: its steps are too coarse to judge a stop\. Use it for count and order\.$/,
    "Intervals of 95 %",
  ]);
  const rows = carries(page).getByRole("row");
  await expect(rows.nth(1)).toHaveText(/^Screen14 of 15 \(true rate 70 % to 99 %\)–$/);
  await expect(rows.nth(2)).toHaveText(/^Printed dial6 of 8 \(true rate 41 % to 93 %\)\+1\.0 \(\+0\.4 to \+1\.6\)$/);
  await expect(rows.nth(3)).toHaveText(/^Encoder1 of 1 \(true rate 21 % to 100 %\)–$/);

  const lock = page.getByRole("combobox", { name: "Lock and exercise" });
  await expect(lock.getByRole("option", { selected: true })).toHaveText(/\(15\)$/);
  await turnedBy.selectOption({ label: "Printed dial" });
  await expect(lock.getByRole("option", { selected: true })).toHaveText(/\(8\)$/);
  await expect(page.getByRole("region", { name: "What next" })).toContainText(
    "9 openings in a row would make you ready",
  );
  expect(await violations(page)).toEqual([]);
});

test("a class is seen by the screen until another hand is chosen, by keyboard too", async ({ page }) => {
  await page.goto("#/desk");
  await page
    .locator("input[type=file]")
    .setInputFiles([{ name: "class.json", mimeType: "application/json", buffer: Buffer.from(handsClass()) }]);
  const turnedBy = page.getByRole("combobox", { name: "Turned by" });
  await expect(turnedBy).toHaveValue("screen");
  const table = page.getByRole("table", { name: "People by skills" });
  const before = await table.textContent();
  await turnedBy.focus();
  await page.keyboard.press("ArrowDown");
  await expect(turnedBy).not.toHaveValue("screen");
  await expect(table).not.toHaveText(before ?? "");
  expect(await violations(page)).toEqual([]);
});
