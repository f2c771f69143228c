import type { Page } from "@playwright/test";
import { testSheet } from "../support/testSheet";
import { expectGoodInEveryLook } from "./axe";
import { expect, makeClass, openView, setUpSchool, test } from "./classServer";

// A server of its own comes first.
test.setTimeout(120_000);

const rows = (page: Page) => page.getByRole("table", { name: "Assignments" }).getByRole("row");

async function addPeople(page: Page, ...names: readonly string[]): Promise<void> {
  await openView(page, "Roster and cards");
  for (const name of names) {
    await page.getByLabel("Name to add").fill(name);
    await page.keyboard.press("Enter");
    await expect(page.getByRole("rowheader", { name })).toBeVisible();
  }
}

test("an instructor assigns a sample and a sheet from a file, changes one, ends one early, withdraws one", async ({
  page,
  browser,
  classServer,
}) => {
  await setUpSchool(page, classServer);
  await makeClass(page, "Fitters 1");
  await addPeople(page, "Ada", "Bo");
  await openView(page, "Assignments");
  await page.getByRole("link", { name: "Assign a sheet" }).click();
  await page.getByRole("button", { name: "Assign the sheet" }).click();
  await expect(page.getByText("Choose a sheet.")).toBeVisible();
  await page.getByLabel("Sheet", { exact: true }).selectOption({ index: 1 });
  const title = (await page.getByLabel("Sheet", { exact: true }).locator("option:checked").textContent()) ?? "";
  await page.getByLabel("some people").check();
  await page.getByLabel("Bo", { exact: true }).check();
  await page.getByText("Extra time for a person who needs it").click();
  await page.getByRole("textbox", { name: "Bo" }).fill("50");
  await page.getByLabel("Attempts for each person").fill("2");
  await page.getByRole("button", { name: "Assign the sheet" }).click();
  await expect(page.getByText(/ is assigned\./)).toBeVisible();
  await expect(rows(page).nth(1)).toContainText("Test for Bo; own extra time for 1 person");
  expect(title).toContain("Sample");

  await page.getByRole("link", { name: "New assignment" }).click();
  const file = (sheet: unknown) => ({
    name: "friday.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(sheet)),
  });
  const choose = page.locator("input[type=file]");
  await choose.setInputFiles(file({ format: "gatefall-sheet" }));
  await expect(page.getByRole("alert")).toContainText("friday.json was not loaded");
  await choose.setInputFiles(file(testSheet({ title: "Friday practice" })));
  await expect(page.getByText("From friday.json: Friday practice")).toBeAttached();
  await expect(page.getByRole("radio", { name: "practice", exact: true })).toBeChecked();
  await page.getByLabel("until").fill("2020-01-01T08:00");
  await page.getByRole("button", { name: "Assign the sheet" }).click();
  await expect(page.getByText("It ends before it begins.")).toBeVisible();
  await page.getByLabel("until").fill("2099-01-01T08:00");
  await page.getByLabel("The number of attempts is limited").uncheck();
  await page.getByRole("button", { name: "Assign the sheet" }).click();
  const friday = rows(page).filter({ hasText: "Friday practice" });
  await expect(friday).toContainText("to Jan 1, 2099, 08:00");
  await expect(friday).toContainText("No limit");

  await page.getByRole("link", { name: "Open Friday practice" }).click();
  // Its console is its own: there the refusal is an error.
  const elsewhere = await browser.newContext({ storageState: await page.context().storageState() });
  const other = await elsewhere.newPage();
  await other.goto(page.url());
  await other.getByRole("button", { name: "Save the change" }).waitFor();
  const attempts = other.getByLabel("Attempts for each person");
  await page.getByLabel("The number of attempts is limited").check();
  await page.getByLabel("Attempts for each person").fill("7");
  await page.getByRole("button", { name: "Save the change" }).click();
  await expect(page.getByText("Friday practice is changed.")).toBeVisible();
  // Whoever changes it on top of what it was before is told, and sees what it is now.
  await other.getByLabel("The number of attempts is limited").check();
  await attempts.fill("3");
  await other.getByRole("button", { name: "Save the change" }).click();
  await expect(other.getByRole("alert")).toHaveText(/^Not done: someone changed this meanwhile .*\.$/);
  await expect(attempts).toHaveValue("7");
  await elsewhere.close();
  await page.getByRole("link", { name: "Open Friday practice" }).click();
  await page.getByRole("button", { name: "End it early" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "End it early" }).click();
  await expect(friday).toContainText("Ended early");
  await page.getByRole("link", { name: "Open Friday practice" }).click();
  await page.getByRole("button", { name: "Withdraw it" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Withdraw it" }).click();
  await expect(page.getByText("Friday practice is withdrawn.")).toBeVisible();
  await expect(friday).toHaveCount(0);
});

test("axe finds nothing wrong with the assignments, and nothing lies beside the page", { tag: "@long" }, async ({
  page,
  classServer,
}) => {
  const judge = (what: string) => expectGoodInEveryLook(page, what);
  await setUpSchool(page, classServer);
  await makeClass(page, "Fitters 1");
  await addPeople(page, "Ada", "Bo");
  await openView(page, "Assignments");
  await page.getByRole("link", { name: "Assign a sheet" }).waitFor();
  await judge("no assignment");
  await page.getByRole("link", { name: "Assign a sheet" }).click();
  await page.getByRole("button", { name: "Assign the sheet" }).click();
  await page.getByLabel("some people").check();
  await judge("form with problems");
  await page.getByLabel("Sheet", { exact: true }).selectOption({ index: 1 });
  await page.getByLabel("Ada", { exact: true }).check();
  await page.getByText("Extra time for a person who needs it").click();
  await judge("form filled in");
  await page.getByRole("button", { name: "Assign the sheet" }).click();
  // At a phone's width the list has no row of headings.
  await page.getByRole("rowheader", { name: "Test for Ada" }).waitFor();
  await judge("list");
});
