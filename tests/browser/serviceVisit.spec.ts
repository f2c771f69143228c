import type { Page } from "@playwright/test";
import { LOOKS, look, violations } from "./axe";
import { expect, test } from "./page";

/** Presses buttons by keyboard alone. */
async function presses(page: Page, ...names: readonly string[]): Promise<void> {
  for (const name of names) {
    await page.getByRole("button", { name, exact: true }).focus();
    await page.keyboard.press("Enter");
  }
}

const said = (page: Page) => page.getByRole("region", { name: "At the door" }).getByRole("status");

test("a visit that acts first and reads nothing has each fault named; the next lock is another visit", async ({
  page,
}) => {
  await page.goto("#/fitting?view=service&seed=3");
  await presses(page, "Take the cover off");
  await expect(said(page)).toHaveText(/door is shut/);
  await presses(
    page,
    "Have the door opened",
    "Take the cover off",
    "Tighten to 1.1 Nm",
    "Lubricate",
    "Dial the combination",
  );
  await expect(said(page)).toHaveText(/Dial the combination: The lock (opened|did not open)\./);
  await presses(page, "Shut the door");
  await expect(page.getByRole("region", { name: "At the door" })).toContainText("shut on a lock that is not proved");
  await page.getByLabel("The combination").focus();
  await page.keyboard.press("Space");
  await presses(page, "Write the record", "Leave the site: show the debrief");
  const debrief = page.getByRole("region", { name: "Debrief" });
  await expect(debrief.getByRole("heading", { name: "Debrief" })).toBeFocused();
  for (const fault of [
    "You did not ask",
    "You acted without the instructions: you tightened the key's screw",
    "at a door that was not held",
    "outside the torque in the instructions",
    "thread of the key's screw is stripped",
    "shut on a lock that was not proved",
    "You left the cover off",
    "The combination is in your record",
    "The maker's written instructions decide",
  ]) {
    await expect(debrief).toContainText(fault);
  }
  await presses(page, "Next visit, to another lock");
  await expect(page.getByRole("heading", { name: /^At the door/ })).toBeFocused();
  await expect(page.getByRole("region", { name: "At the door" })).toContainText("The door is shut.");
});

test("a section of the papers shows once it is opened", async ({ page }) => {
  await page.goto("#/fitting?view=service&seed=3");
  const papers = page.getByRole("region", { name: "Papers" });
  await expect(papers).not.toContainText("Nm");
  await presses(page, "Read: Limits and torque");
  await expect(papers).toContainText(/Key's screw: 0\.\d\d to 0\.\d\d Nm/);
  await expect(papers.getByRole("button", { name: "Read: Limits and torque" })).toHaveCount(0);
});

test("a visit goes on after a reload, and is a row among the jobs once its debrief is shown", async ({ page }) => {
  await page.goto("#/fitting?view=service&seed=3&help=counts");
  await presses(page, "Read: Limits and torque", "Have the door opened", "Measure the lost motion");
  const seen = await said(page).textContent();
  await page.goto("#/fitting?view=service");
  await page.reload();
  await expect(said(page)).toHaveText("You are back in your visit, where you left it.");
  await expect(page.getByRole("list", { name: "Earlier, latest first" })).toContainText(seen ?? "nothing");
  await expect(page.getByRole("region", { name: "Papers" })).toContainText("Key's screw");
  await presses(page, "Leave the site: show the debrief");
  await expect(page.getByRole("region", { name: "Papers" })).toContainText("no lubricant of any kind");
  await page.goto("#/logbook?view=jobs");
  const row = page.getByRole("row", { name: /Service visit/ });
  await expect(row).toContainText(/counts\s*Not right\s*holder not asked/);
  await row.getByRole("button", { name: /^Look at the job of/ }).press("Enter");
  const job = page.getByRole("region", { name: "Chosen job" });
  await expect(job).toContainText(/\d+ faults in the visit\. 3 acts\./);
  await expect(job.getByRole("link", { name: "The same visit again" })).toHaveAttribute(
    "href",
    /view=service&profile=.*&help=counts&seed=3$/,
  );
  await page.goto("#/fitting?view=service");
  await expect(page.getByRole("region", { name: "At the door" })).toContainText("The door is shut.");
});

test("with full help what is left to inspect is named, with counts it is counted, silent help says nothing", async ({
  page,
}) => {
  await page.goto("#/fitting?view=service&seed=3&profile=three-wheel");
  const help = page.getByRole("region", { name: "Help" });
  await expect(help).toContainText("14 things left to inspect.");
  await expect(help.getByText("Measure the lost motion")).toBeVisible();
  await presses(page, "Read: Limits and torque", "Have the door opened", "Measure the lost motion");
  await expect(said(page)).toContainText("Instructions: Lost motion: at most");
  await expect(help).toContainText("12 things left to inspect.");
  await expect(help.getByText("Measure the lost motion")).toHaveCount(0);
  await presses(page, "Counts");
  await expect(help).toContainText("14 things left to inspect.");
  await expect(help.getByText("Measure the lost motion")).toHaveCount(0);
  await presses(page, "Silent");
  await expect(help).toHaveCount(0);
});

test("on a phone what an act showed is beside its button, and with its group folded only at the door", async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto("#/fitting?view=service&seed=3");
  const group = page.getByRole("region", { name: "Door and cover" });
  await group.getByText("Door and cover").click();
  await presses(page, "Have the door opened");
  const text = (await said(page).textContent()) ?? "nothing";
  await expect(group.getByText(text)).toBeVisible();
  await group.getByText("Door and cover").click();
  await expect(group.getByText(text)).toBeHidden();
  await expect(said(page)).toBeVisible();
});

for (const one of LOOKS) {
  test(`axe finds nothing wrong with a service visit and its debrief, ${one.name}`, async ({ page }) => {
    await look(page, one);
    await page.goto("#/fitting?view=service&seed=3");
    await page.getByText("Ask the holder").waitFor();
    // On a phone, acts are folded by group.
    await page.locator("main details").evaluateAll((all) => {
      for (const one of all) (one as HTMLDetailsElement).open = true;
    });
    await presses(page, "Have the door opened", "Look at dial and ring", "Read: Limits and torque");
    expect(await violations(page)).toEqual([]);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(one.width);
    await presses(page, "Leave the site: show the debrief");
    await expect(page.getByRole("region", { name: "Debrief" })).toBeVisible();
    expect(await violations(page)).toEqual([]);
  });
}
