import { readFile } from "node:fs/promises";
import type { Page } from "@playwright/test";
import { idealMotion } from "../../src/dialing/idealMotion";
import type { Turn } from "../../src/lock/dial";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { LOOKS, look, violations } from "./axe";
import type { Bench } from "./bench";
import { KeyHand } from "./hands";
import { expect, test } from "./page";

/** Dials the three-wheel lock's combination by keyboard, to the end. */
async function dial(bench: Bench, stopErrors: readonly number[] = []): Promise<void> {
  const profile = shippedProfile("three-wheel");
  const hand = new KeyHand(bench, profile.graduations);
  const path = idealMotion(profile, profile.asSet ?? [], await bench.reading(), stopErrors, 5);
  for (const [i, position] of path.slice(1).entries()) await hand.turnBy(position - (path[i] ?? 0));
}

const attempts = (page: Page) => page.getByRole("button", { name: /^Replay the attempt of/ });
const person = (page: Page, name: string) =>
  page.getByRole("group", { name: "Who practices" }).getByRole("button", { name });

async function loadDemo(page: Page): Promise<void> {
  await page.goto("#/logbook?view=files");
  await page.getByRole("button", { name: "Load the demo" }).click();
  await expect(page.getByText(/records added/)).toBeVisible();
}

test("an attempt dialed by keyboard is in the logbook, is there after a reload, and replays as it was", async ({
  bench,
  page,
}) => {
  await bench.open();
  await dial(bench, [0, 3]);
  await expect(bench.state).toHaveText(/^Did not open/);
  await page.goto("#/logbook");
  await expect(attempts(page)).toHaveCount(1);
  await page.reload();
  const row = page.getByRole("row", { name: /Did not open/ });
  await expect(row).toContainText("Three-wheel");
  await expect(row).toContainText("+3.0");
  await attempts(page).press("Enter");
  await expect(page.getByRole("region", { name: "What happened" })).toContainText("Did not open");
  const time = page.getByRole("slider", { name: "Time in the replay" });
  await time.press("End");
  await expect(page.getByRole("region", { name: "Cutaway" })).toBeVisible();
  await expect(time).toHaveAttribute("aria-valuetext", /seconds, reading/);
});

test("where the browser keeps nothing, practice goes on, and the attempt waits in the tab with the reason", async ({
  bench,
  page,
}) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException("denied", "SecurityError");
    };
  });
  await bench.open();
  await dial(bench);
  await expect(bench.state).toHaveText(/^Opened/);
  await page.getByRole("link", { name: "Logbook" }).click();
  await expect(attempts(page)).toHaveCount(1);
  await expect(
    page.getByText(/records? waits? in this tab\. This browser does not let the page store anything/),
  ).toBeVisible();
  await expect(page.getByRole("button", { name: "Try again" })).toBeVisible();
  await page.getByRole("link", { name: "Files" }).click();
  await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Whole logbook" }).click()]);
  await expect(page.getByText("Saved 1 person and 1 attempt.")).toBeVisible();
});

test("attempts are kept for whoever practices, and switching is one tap", async ({ bench, page }) => {
  await page.goto("#/logbook");
  for (const name of ["Ilsabet", "Quorin"]) {
    await page.getByRole("button", { name: "Add a person" }).click();
    await page.getByRole("textbox", { name: /^Name/ }).fill(name);
    await page.keyboard.press("Enter");
    await expect(person(page, name)).toHaveAttribute("aria-pressed", "true");
  }
  await bench.open();
  await dial(bench);
  await expect(bench.state).toHaveText(/^Opened/);
  await page.goto("#/logbook");
  await expect(attempts(page)).toHaveCount(1);
  await person(page, "Ilsabet").click();
  await expect(page.getByText("No attempts.")).toBeVisible();
  await page.getByRole("button", { name: "Rename Ilsabet" }).click();
  await page.getByRole("textbox", { name: /^Name/ }).fill("quorin");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("alert")).toHaveText(/is here already/);
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Delete Ilsabet" }).click();
  await page.getByRole("button", { name: "Delete Ilsabet and all records" }).click();
  await expect(person(page, "Ilsabet")).toHaveCount(0);
  await expect(attempts(page)).toHaveCount(1);
});

/** Turns onto zero from one side, a good way, rests, and takes the reading. */
async function readZero(bench: Bench, side: Turn): Promise<void> {
  const { page } = bench;
  const said = (await page.getByText(/off zero$/).textContent()) ?? "";
  const off = Number(said.replace("−", "-").replace(/[^-.\d]/g, ""));
  const sign = side === "left" ? 1 : -1;
  const way = -off * sign > 30 ? -off : sign * 100 - off;
  await new KeyHand(bench, 100).turnBy(way);
  // The dial must have rested for 0.4 s.
  await page.waitForTimeout(600);
  await bench.dial.press("Space");
}

test("a zeroing by keyboard is in the logbook once the zero is set", async ({ bench, page }) => {
  await page.goto("#/zeroing");
  await page.getByRole("button", { name: "Clamp the ring" }).click();
  for (const side of ["right", "right", "right", "left", "left", "left"] as const) await readZero(bench, side);
  await page.getByRole("link", { name: "Logbook" }).click();
  const line = page
    .getByRole("table", { name: /^Zeroings/ })
    .getByRole("row")
    .nth(1);
  await expect(line).toContainText(/Zero set\s*6\s*0/);
});

test("the demo comes with one click and goes with one", async ({ page }) => {
  await page.goto("#/logbook");
  await page.getByRole("button", { name: "Load the demo" }).click();
  await expect(page.getByRole("heading", { name: "Logbook" })).toBeFocused();
  await expect(page.getByRole("button", { name: "Load the demo" })).toHaveCount(0);
  await person(page, "Mibsy").click();
  await expect(page.getByText("40 attempts, latest first")).toBeVisible();
  await expect(attempts(page).first()).toBeVisible();
  await page.getByRole("link", { name: "Files" }).click();
  await page.getByRole("button", { name: "Remove the demo" }).click();
  await expect(page.getByText("7 invented people removed.")).toBeVisible();
  await expect(page.getByRole("button", { name: "Load the demo" })).toBeFocused();
  await expect(person(page, "Mibsy")).toHaveCount(0);
});

test("what is exported comes back without duplicates, and a bad file changes nothing", async ({ page }, info) => {
  test.slow();
  // Every motion is checked, which a busy machine does slowly.
  const read = { timeout: 20_000 };
  await loadDemo(page);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Whole logbook" }).click(),
  ]);
  const file = info.outputPath("logbook.json");
  await download.saveAs(file);
  const input = page.locator("input[type=file]");
  await input.setInputFiles(file);
  await expect(page.getByText(/logbook\.json: Nothing new: 394 records were here already/)).toBeVisible(read);
  await page.getByRole("button", { name: "Remove the demo" }).click();
  await expect(person(page, "Mibsy")).toHaveCount(0);
  await input.setInputFiles(file);
  await expect(page.getByText(/logbook\.json: 394 records added\./)).toBeVisible(read);
  await input.setInputFiles({ name: "bad.json", mimeType: "application/json", buffer: Buffer.from("{") });
  await expect(page.getByRole("alert").filter({ hasText: "This file is not a logbook" })).toBeVisible();
  for (const name of ["Attempts as CSV", "Jobs as CSV", "Replay lines", "xAPI statements"]) {
    const [other] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name }).click()]);
    expect((await readFile(await other.path(), "utf8")).length).toBeGreaterThan(1000);
  }
});

test("progress shows each view with a sentence and a table", async ({ page }) => {
  await loadDemo(page);
  await person(page, "Pelline").click();
  await page.getByRole("link", { name: "Progress" }).click();
  const titles = [
    "First-time openings",
    "Stop errors",
    "Round the dial",
    "Chance on another lock",
    "Speed and accuracy",
  ];
  for (const title of [...titles, "Readiness", "What is usual for you", "How far readiness can be trusted"]) {
    const view = page.getByRole("region", { name: title, exact: true });
    await expect(view.locator(".figure-sentence")).not.toBeEmpty();
    await view.getByText("As a table").click();
    await expect(view.getByRole("table").getByRole("row").nth(1)).toBeVisible();
  }
  await page.getByRole("combobox", { name: /What is measured/ }).selectOption("time");
  await expect(page.getByRole("region", { name: "What is usual for you", exact: true })).toContainText(/Usual for you/);
  const next = page.getByRole("region", { name: "What next" });
  await expect(next.getByRole("link").first()).toHaveAttribute("href", /^#\/bench\?profile=/);
  // Mibsy has not shown everything yet.
  await person(page, "Mibsy").click();
  await next.getByRole("link", { name: /^Start \d+ tries$/ }).click();
  await expect(page.getByRole("main")).toContainText("Practice run");
  await expect(page.getByRole("button", { name: "I have read it" })).toBeVisible();
});

for (const view of ["attempts", "progress", "files"]) {
  const tag = view === "attempts" ? [] : ["@long"];
  test(`axe finds nothing wrong, light or dark, on a desk or a phone: ${view}`, { tag }, async ({ page }) => {
    await loadDemo(page);
    await person(page, "Mibsy").click();
    await page.goto(`#/logbook?view=${view}`);
    if (view === "attempts") {
      await attempts(page).first().click();
      await expect(page.getByRole("slider", { name: "Time in the replay" })).toBeVisible();
    }
    if (view === "progress") await page.getByText("As a table").first().click();
    for (const one of LOOKS) {
      await look(page, one);
      expect(await violations(page), one.name).toEqual([]);
      const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(overflow, "nothing lies beside the page").toBeLessThanOrEqual(0);
    }
  });
}
