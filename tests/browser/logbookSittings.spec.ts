import { readFile } from "node:fs/promises";
import { test as base, type Page } from "@playwright/test";
import { dialingStation, testSheet, zeroingStation } from "../support/testSheet";
import { violations } from "./axe";
import { Bench } from "./bench";
import { expect, test } from "./page";
import { dialIt, dialLast, start } from "./sittingByKeys";

/** A try at dialing, then one at setting zero. */
const SHEET = testSheet({
  title: "Dial and zero",
  stations: [
    dialingStation({ repetitions: 1, passMarks: { firstTime: 1 } }),
    zeroingStation({ repetitions: 1, passMarks: { zeroed: 1 } }),
  ],
  sitting: { pauseAllowed: true, onReload: "resume", clockHideable: true },
});

const sittings = (page: Page) => page.getByRole("table", { name: "Sittings, latest first" }).locator("tbody tr");

async function expectClean(page: Page): Promise<void> {
  for (const [width, colorScheme] of [
    [1280, "light"],
    [390, "dark"],
  ] as const) {
    await page.setViewportSize({ width, height: 844 });
    await page.emulateMedia({ colorScheme, reducedMotion: "reduce" });
    expect(await violations(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  }
  await page.setViewportSize({ width: 1280, height: 800 });
}

test("a sitting is in the logbook's list, is noted there, and opens again with its tries, readings and check", async ({
  page,
}) => {
  await start(page, SHEET);
  await dialIt(page);
  await page.keyboard.press("Enter");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Space");
  await expect(page.getByRole("status").filter({ hasText: /^Not counted\./ })).toBeVisible();
  await page.getByRole("button", { name: "End this try" }).click();
  await page.getByRole("button", { name: "Stops try 2" }).click();
  await expect(page.getByRole("region", { name: "Stops of try 2" })).toContainText(/right.*no: /);
  await page.getByRole("button", { name: "Done" }).click();

  await page.goto("#/logbook?view=sittings");
  await expect(sittings(page)).toHaveText([/Dial and zero.*Not shown yet.*2 tries/]);
  await sittings(page).getByRole("button").press("Enter");
  const tags = page.getByRole("textbox", { name: /^Tags/ });
  await tags.fill("Retake, cold hands");
  await page.getByRole("textbox", { name: "Note" }).fill("Door stood open.");
  await tags.press("Enter");
  await expect(page.getByText("Saved.")).toBeVisible();
  await expectClean(page);
  await page.reload();
  await page.getByRole("searchbox").fill("nobody's");
  await expect(page.getByText(/^No sittings match this filter\./)).toBeVisible();
  await page.getByRole("searchbox").fill("stood open");
  await expect(sittings(page)).toContainText(["Retake, cold hands"]);
  await sittings(page).getByRole("button").click();
  await expect(page.getByRole("textbox", { name: "Note" })).toHaveValue("Door stood open.");
  await page.getByRole("link", { name: "Open the result" }).click();
  await expect(page.getByRole("button", { name: "Practice these misses" })).toBeVisible();
  await page.getByRole("button", { name: "Replay try 1" }).click();
  await expect(page.getByRole("region", { name: "Turn chart" })).toBeVisible();
  await page.getByRole("button", { name: "Check this record" }).click();
  await expect(page.getByText(/^The record is sound/)).toBeVisible();
  await expectClean(page);

  await page.goto("#/sittings");
  await expect(page.getByRole("region", { name: "Earlier sittings" })).toContainText("Dial and zero");
  await page.goto("#/logbook");
  await page.getByRole("button", { name: "Delete Orrin" }).click();
  await page.getByRole("button", { name: "Delete Orrin and all records" }).click();
  await expect(page.getByRole("button", { name: "Delete Orrin" })).toHaveCount(0);
  await page.goto("#/sittings");
  await expect(page.getByText("No earlier sittings in this browser.")).toBeVisible();
});

test("an attempt is noted in the logbook, and is found by its tags after a reload", async ({ page, bench }) => {
  await bench.open();
  await dialLast(page);
  await expect(bench.state).toHaveText(/^Opened/);
  await page.goto("#/logbook");
  await page.getByRole("button", { name: /^Replay the attempt of/ }).click();
  await page.getByRole("textbox", { name: /^Tags/ }).fill("first of the day");
  await page.getByRole("button", { name: "Save tags and note" }).press("Enter");
  await expect(page.getByText("Saved.")).toBeVisible();
  await page.reload();
  await expect(page.getByRole("row", { name: /Opened/ })).toContainText("first of the day");
  await page.getByRole("combobox", { name: "Tag" }).selectOption("first of the day");
  await expect(page.getByText("1 attempt, latest first")).toBeVisible();
  await page.getByRole("checkbox", { name: "misses only" }).press("Space");
  await expect(page.getByText("No attempts.")).toBeVisible();
});

test("a typed note is never lost: not by leaving the field, the list, the page or the tab", { tag: "@long" }, async ({
  page,
  bench,
}) => {
  await bench.open();
  await dialLast(page);
  await expect(bench.state).toHaveText(/^Opened/);
  await page.goto("#/logbook");
  const attempt = page.getByRole("button", { name: /^Replay the attempt of/ });
  const note = page.getByRole("textbox", { name: "Note" });
  await attempt.click();
  await note.fill("left the field");
  await attempt.focus();
  await expect(page.getByText("Saved.")).toBeVisible();
  await note.fill("went elsewhere");
  await page.getByRole("link", { name: "Files", exact: true }).click();
  await page.getByRole("link", { name: "Attempts", exact: true }).click();
  await attempt.click();
  await expect(note).toHaveValue("went elsewhere");
  await note.fill("reloaded at once");
  await page.reload();
  await attempt.click();
  await expect(note).toHaveValue("reloaded at once");
  // What cannot be saved waits as it was typed.
  await page.getByRole("textbox", { name: /^Tags/ }).fill("x".repeat(80));
  await expect(page.getByRole("alert")).toContainText("at most 60 letters in a tag");
  await page.reload();
  await attempt.click();
  await expect(page.getByRole("textbox", { name: /^Tags/ })).toHaveValue("x".repeat(80));
  await expect(note).toHaveValue("reloaded at once");
});

/** The console is not watched: React reports there what it caught. */
base(
  "a page that fails to draw says so in its place, saves the logbook, and leaves the others alone",
  async ({ page }) => {
    const bench = new Bench(page);
    await bench.open();
    await dialLast(page);
    await expect(bench.state).toHaveText(/^Opened/);
    await page.evaluate(() => {
      const real = Object.getOwnPropertyDescriptor(Intl.DateTimeFormat.prototype, "format") ?? {};
      Object.defineProperty(Intl.DateTimeFormat.prototype, "format", {
        configurable: true,
        get(this: Intl.DateTimeFormat) {
          if (document.title !== "mended") throw new RangeError("no such day");
          return real.get?.call(this);
        },
      });
    });
    await page.getByRole("link", { name: "Logbook" }).click();
    const failed = page.getByRole("alert");
    await expect(failed).toContainText("This page has failed.");
    expect(await violations(page)).toEqual([]);
    const saving = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save the whole logbook" }).click();
    const saved = JSON.parse(await readFile(await (await saving).path(), "utf8"));
    expect(saved.attempts).toMatchObject([{ opened: true }]);
    await page.getByRole("link", { name: "Bench" }).click();
    await expect(bench.dial).toBeVisible();
    await page.evaluate(() => {
      document.title = "mended";
    });
    await page.getByRole("link", { name: "Logbook" }).click();
    await expect(page.getByRole("row", { name: /Opened/ })).toBeVisible();
  },
);
