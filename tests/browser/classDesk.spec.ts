import { readFile } from "node:fs/promises";
import type { Page } from "@playwright/test";
import { csvParse } from "d3-dsv";
import { demoLogbook } from "../../src/progress/demo/demoLogbook";
import { LOOKS, look, violations } from "./axe";
import type { RunningServer } from "./classServer";
import { expect, makeClass, openView, setUpSchool, test } from "./classServer";

// A server of its own comes first.
test.setTimeout(120_000);

const demo = demoLogbook(7, Date.UTC(2026, 2, 2, 8));
const NAME = "Mibsy";
const owner = demo.records.people.find(({ name }) => name === NAME);
const attempts = demo.records.attempts.filter(({ personId }) => personId === owner?.id);

/** Joins the class that the page shows, at another bench, and sends a week of attempts from there. */
async function aWeekAtABench(page: Page, { address }: RunningServer): Promise<void> {
  await page.getByRole("button", { name: "New code" }).click();
  const shown = page.locator(".class-code b");
  await expect(shown).toHaveText(/^\w{4}-\w{4}$/);
  const other = await page.context().browser()?.newContext();
  if (other === undefined) throw new Error("there is no browser");
  const joining = await other.request.post(`${address}api/join`, {
    data: { code: await shown.textContent(), name: NAME, bench: "Bench 3" },
  });
  const { person } = await joining.json();
  const records = attempts.map((record) => ({ kind: "attempts", record: { ...record, personId: person.id } }));
  const sent = await other.request.post(`${address}api/bench/records`, { data: { sentAt: Date.now(), records } });
  expect((await sent.json()).receipts.every(({ outcome }: { outcome: string }) => outcome === "received")).toBe(true);
  await other.close();
}

async function saved(page: Page, button: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: button }).click(),
  ]);
  return readFile(await download.path(), "utf8");
}

test("the class desk shows what a bench sent; it is saved in every form; a person is made one of two, and erased by the name typed", async ({
  page,
  classServer,
}) => {
  await setUpSchool(page, classServer);
  await makeClass(page, "Fitters 1");
  await openView(page, "Class desk");
  await expect(page.getByText("No one in this class has an attempt yet.")).toBeVisible();
  await openView(page, "Join");
  await aWeekAtABench(page, classServer);

  await openView(page, "Class desk");
  const table = page.getByRole("table", { name: "People by skills" });
  await expect(table.getByRole("rowheader")).toHaveText(NAME);
  await expect(page.getByRole("heading", { name: "Who is ready" })).toBeVisible();
  const opened = attempts.filter((one) => one.profileId === attempts[0]?.profileId);
  const right = opened.filter((one) => one.opened).length;
  await expect(table).toContainText(`${right} of ${opened.length} opened`);
  for (const one of LOOKS) {
    await look(page, one);
    expect(await violations(page), one.name).toEqual([]);
  }
  await table.getByRole("button", { name: NAME, exact: true }).click();
  const dialog = page.getByRole("dialog", { name: NAME });
  await expect(dialog.getByRole("table").first()).toBeVisible();
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Load sittings and stop study" }).click();
  await expect(page.getByRole("heading", { name: "How much stops vary" })).toBeVisible();

  const rows = csvParse(await saved(page, "Save the table as CSV"));
  expect(new Set(rows.map(({ person }) => person))).toEqual(new Set([NAME]));
  expect(csvParse(await saved(page, "Class table as CSV"))).toEqual(rows);
  expect(csvParse(await saved(page, "Attempts as CSV"))).toHaveLength(attempts.length);
  const book = JSON.parse(await saved(page, "Logbook file"));
  expect(book.attempts).toHaveLength(attempts.length);
  expect(JSON.parse(await saved(page, "xAPI statements")).length).toBeGreaterThan(0);

  await openView(page, "Roster and cards");
  await page.getByLabel("Name to add").fill("Mibsy Rowe");
  await page.keyboard.press("Enter");
  await expect(page.getByText("Mibsy Rowe is on the roster.")).toBeVisible();
  await page.getByRole("link", { name: "People", exact: true }).click();
  await page.getByRole("button", { name: "Records and data of Mibsy Rowe" }).click();
  await page.getByLabel("Mibsy Rowe is the same person as").selectOption({ label: NAME });
  await page.getByRole("button", { name: "Make one person of them" }).click();
  await expect(page.getByText("You cannot undo this.").first()).toBeVisible();
  expect(await violations(page)).toEqual([]);
  await page.getByRole("button", { name: "Yes, they are one person" }).click();
  await expect(page.getByText(`Mibsy Rowe is now ${NAME}, with 0 records more.`)).toBeVisible();
  await expect(page.getByRole("button", { name: /^Records and data of/ })).toHaveCount(1);

  await page.getByRole("button", { name: `Records and data of ${NAME}` }).click();
  const erase = page.getByRole("button", { name: `Erase ${NAME}` });
  await expect(page.getByText("Backups that were made before still have everything.")).toBeVisible();
  await expect(erase).toBeDisabled();
  await page.getByLabel("Type the name").fill("mibs");
  await expect(erase).toBeDisabled();
  expect(await violations(page)).toEqual([]);
  await page.getByLabel("Type the name").fill(NAME);
  await erase.click();
  await expect(page.getByText(`${NAME} is erased, with ${attempts.length} records.`)).toBeVisible();
  await expect(page.getByText("Nobody is on a roster yet.")).toBeVisible();
  await page.getByRole("link", { name: "Classes" }).click();
  await page.getByRole("link", { name: "Fitters 1" }).click();
  await openView(page, "Class desk");
  await expect(page.getByText("No one in this class has an attempt yet.")).toBeVisible();
});
