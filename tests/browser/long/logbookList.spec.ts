import type { Locator, Page } from "@playwright/test";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { handMotion } from "../../../src/progress/demo/handMotion";
import { writeLogbookFile } from "../../../src/records/file/logbookFile";
import { encodeTrace } from "../../../src/records/motion/traceCodec";
import { seededChance } from "../../../src/statistics/chance";
import { anAttempt, aPerson, contents, NOON } from "../../support/logbookRecords";
import { LOOKS, look, violations } from "../axe";
import { expect, test } from "../page";

const COUNT = 400;
/** Rows that may be drawn at once: those in view and some beside. */
const MOST_DRAWN = 40;
const MISSES = 40;

/** Longer than its line. */
const LONG_TAG = "gloves and a dial that turns heavily";

/** A logbook file of many attempts, each tagged with its number; every tenth is a miss, the oldest has its motion. */
function manyAttempts(): Buffer {
  const motion = handMotion(
    shippedProfile("three-wheel"),
    [29, 92, 54],
    12,
    { stopErrors: [], speed: 60 },
    seededChance(7),
  );
  const trace = encodeTrace({ start: { dial: 12, slack: [0, 0, 0] }, ...motion });
  const attempts = Array.from({ length: COUNT }, (_, i) =>
    anAttempt(`n${i + 1}`, { startedAt: NOON + 60_000 * i, tags: [`#${i + 1}.`, LONG_TAG], opened: i % 10 !== 5 }),
  );
  const { records } = contents([aPerson("tavro", { name: "Tavro" })], attempts);
  return Buffer.from(writeLogbookFile({ records, traces: new Map([["n1", trace]]) }, NOON));
}

const region = (page: Page) => page.locator(".attempt-scroll");
const lines = (page: Page) => page.getByRole("button", { name: /^Replay the attempt of/ });
/** The line that has the focus. */
const held = (page: Page) => page.getByRole("row").filter({ has: page.locator(":focus") });
const isInView = (line: Locator) => expect(line).toBeInViewport({ ratio: 0.99 });

async function open(page: Page): Promise<void> {
  await page.goto("#/logbook?view=files");
  const file = { name: "many.json", mimeType: "application/json", buffer: manyAttempts() };
  await page.locator("input[type=file]").setInputFiles(file);
  await expect(page.getByText(/401 records added/)).toBeVisible();
  await page.getByRole("link", { name: "Attempts" }).click();
  await expect(page.getByText("400 attempts, latest first")).toBeVisible();
}

test("hundreds of attempts are one list by keyboard: few are drawn, all can be come to, any is replayed", async ({
  page,
}) => {
  await open(page);
  const table = page.getByRole("table", { name: /^Attempts, latest first/ });
  await expect(table).toHaveAttribute("aria-rowcount", `${COUNT + 1}`);
  await lines(page).first().press("End");
  await expect(held(page)).toContainText("#1.");
  await expect(held(page)).toHaveAttribute("aria-rowindex", `${COUNT + 1}`);
  await isInView(held(page));
  const found = new Set<string>();
  for (let step = 0; step < COUNT && !(await held(page).textContent())?.includes(`#${COUNT}.`); step++) {
    await page.keyboard.press("PageUp");
    await expect(held(page)).toContainText("#");
    const tags = await table.getByText(/^#\d+\./).allTextContents();
    expect(tags.length).toBeLessThan(MOST_DRAWN);
    for (const tag of tags) found.add(tag.split(",")[0] ?? "");
  }
  expect(found.size).toBe(COUNT);
  expect(await region(page).evaluate((element) => element.scrollTop)).toBe(0);

  // The focus stays with its row, wherever the list is scrolled to.
  await page.keyboard.press("End");
  await region(page).evaluate((element) => element.scrollTo(0, 0));
  await expect(table).toContainText(`#${COUNT}.`);
  await expect(held(page)).toContainText("#1.");
  await page.keyboard.press("ArrowUp");
  await expect(held(page)).toContainText("#2.");
  await isInView(held(page));
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("slider", { name: "Time in the replay" })).toBeVisible();

  const scrolled = await region(page).evaluate((element) => element.scrollTop);
  await page.getByRole("textbox", { name: /^Tags/ }).fill("oldest");
  await page.getByRole("textbox", { name: /^Tags/ }).press("Enter");
  await expect(table).toContainText("oldest");
  expect(await region(page).evaluate((element) => element.scrollTop)).toBe(scrolled);

  await page.getByRole("checkbox", { name: "misses only" }).check();
  await expect(page.getByText(`${MISSES} attempts, latest first`)).toBeVisible();
  await expect(table).toContainText("#396.");
  expect(await region(page).evaluate((element) => element.scrollTop)).toBe(0);
});

test("the long list keeps its place on another screen, shows axe nothing wrong, and prints what it holds", async ({
  page,
}) => {
  await open(page);
  await lines(page).first().press("PageDown");
  // On into the second of the blocks that are read at once: a page is as many rows as the window shows.
  for (
    let i = 0;
    i < COUNT &&
    !(await held(page)
      .getByText(/^#3[0-4]\d\./)
      .isVisible());
    i++
  ) {
    await page.keyboard.press("PageDown");
    await expect(held(page)).toContainText("#");
  }
  const tag =
    (await held(page)
      .getByText(/^#\d+\./)
      .textContent()) ?? "";
  for (const one of LOOKS) {
    await look(page, one);
    await expect(held(page)).toContainText(tag);
    expect(await violations(page), one.name).toEqual([]);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    const heights = await page.locator(".attempt-row").evaluateAll((rows) => rows.map((row) => row.clientHeight));
    expect(new Set(heights).size, "rows have one height").toBe(1);
    expect(overflow, "nothing lies beside the page").toBeLessThanOrEqual(0);
  }
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  await expect(lines(page)).toHaveCount(100);
  await expect(page.getByText("100 of 400 attempts are printed")).toBeVisible();
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  expect(await lines(page).count()).toBeLessThan(MOST_DRAWN);
});
