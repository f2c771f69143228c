import type { Page } from "@playwright/test";
import type { Sheet, SittingRules } from "../../src/drill/sheet/sheet";
import { sheetToLink } from "../../src/drill/sheet/sheetLink";
import type { SittingRecord } from "../../src/records/sitting/sittingRecord";
import { dialingStation, testSheet } from "../support/testSheet";
import { LOOKS, look, violations } from "./axe";
import { databaseRows } from "./databaseRows";
import { expect, test } from "./page";
import { dialIt, dialLast, start, startHere } from "./sittingByKeys";

const RULES: SittingRules = { pauseAllowed: true, onReload: "resume", clockHideable: true };

const sheetWith = (rules: Partial<SittingRules> = {}): Sheet =>
  testSheet({
    title: "Two tries",
    stations: [dialingStation({ repetitions: 2, passMarks: { firstTime: 2 } })],
    sitting: { ...RULES, ...rules },
  });

const ask = (page: Page, sheet: Sheet) => page.goto(`#/sittings?sheet=${sheetToLink(sheet)}`);

const breakOff = async (page: Page) => {
  await page.getByRole("button", { name: "Break off" }).click();
  await page.getByRole("button", { name: "End it" }).click();
  await expect(page.getByRole("region", { name: "Record" })).toBeVisible();
};

/** Records of the sittings that the database has with their end, once there are so many. */
async function records(page: Page, count: number): Promise<SittingRecord[]> {
  const ended = async () =>
    (await page.evaluate(databaseRows, "sittings")).flatMap((row) => {
      const { record } = (row as { readonly body: { readonly record?: SittingRecord } }).body;
      return record === undefined ? [] : [record];
    });
  await expect.poll(async () => (await ended()).length).toBe(count);
  return ended();
}

test("each sitting of a sheet in one tab has a seed of its own, and the record says that it was drawn", async ({
  page,
}) => {
  for (let k = 0; k < 3; k++) {
    await ask(page, sheetWith());
    await startHere(page);
    await page.keyboard.press("ArrowLeft");
    await breakOff(page);
    await page.getByRole("button", { name: "Done" }).click();
  }
  const made = await records(page, 3);
  expect(new Set(made.map(({ seed }) => seed)).size).toBe(3);
  expect(made.map(({ seedFrom }) => seedFrom)).toEqual(["drawn", "drawn", "drawn"]);
});

test("a seed in the address is for practice: the screen and the record say so", async ({ page }) => {
  await start(page, sheetWith());
  await expect(page.getByText(/^Practice only: the address sets the seed/)).toBeVisible();
  await page.keyboard.press("ArrowLeft");
  await breakOff(page);
  expect(await records(page, 1)).toMatchObject([{ seed: 5, seedFrom: "address" }]);
});

test("whoever sits gives a name, which is on the screen and in the record; another may say so", async ({ page }) => {
  await ask(page, sheetWith());
  const who = page.getByRole("region", { name: "Who takes this sitting" });
  await page.getByRole("button", { name: "I have read it" }).click();
  await expect(who.getByRole("textbox", { name: "Your name" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(who.getByRole("alert")).toHaveText("Give a name first.");
  await page.keyboard.type("Mibsy");
  await page.keyboard.press("Enter");
  await expect(page.getByText("Candidate: Mibsy")).toBeVisible();
  await page.keyboard.press("ArrowLeft");
  await breakOff(page);
  await page.getByRole("button", { name: "Done" }).click();

  await ask(page, sheetWith());
  await expect(who).toContainText("You are Mibsy.");
  for (const one of LOOKS) {
    await look(page, one);
    expect(await violations(page), one.name).toEqual([]);
  }
  await who.getByRole("button", { name: "Not you?" }).click();
  await who.getByRole("textbox", { name: /your name/ }).fill("Dorvik");
  await page.getByRole("button", { name: "I have read it" }).click();
  await page.getByRole("button", { name: "Start the clock" }).click();
  await expect(page.getByText("Candidate: Dorvik")).toBeVisible();
  await page.keyboard.press("ArrowLeft");
  await breakOff(page);
  const made = await records(page, 2);
  expect(made.map(({ person }) => person).sort()).toEqual(["Dorvik", "Mibsy"]);
  const people = await page.evaluate(databaseRows, "people");
  expect(people.map((one) => (one as { readonly name: string }).name).sort()).toEqual(["Dorvik", "Mibsy"]);
});

test("a clock that is set back in the middle takes no time back, and is on record", async ({ page }) => {
  await start(page, sheetWith());
  await page.evaluate(() => {
    const now = Date.now.bind(Date);
    Date.now = () => now() - 3_600_000;
  });
  await dialIt(page);
  await page.getByRole("button", { name: "Pause" }).click();
  await page.getByRole("button", { name: "Go on" }).click();
  await breakOff(page);
  const [record] = await records(page, 1);
  expect(record?.clockJumps).toHaveLength(1);
  expect(Math.round((record?.clockJumps?.[0]?.by_ms ?? 0) / 60_000)).toBe(-60);
  expect(record?.worked_ms).toBeGreaterThan(100);
  expect(record?.breaks).toMatchObject([{ kind: "pause" }]);
  for (const { length_ms } of record?.breaks ?? []) expect(length_ms).toBeGreaterThanOrEqual(0);
  expect(await page.evaluate(databaseRows, "attempts")).toMatchObject([{ opened: true }]);
});

test("where there is no pause the clock runs on over a reload, whose length is on record", { tag: "@long" }, async ({
  page,
}) => {
  await start(page, sheetWith({ pauseAllowed: false }));
  await page.keyboard.press("ArrowLeft");
  await page.goto("about:blank");
  await page.waitForTimeout(3000);
  await page.goto("/#/sittings");
  await expect(page.getByRole("status")).toContainText("This sheet allows no pause: the clock is running.");
  await page.getByRole("button", { name: "Go on" }).click();
  await breakOff(page);
  const [record] = await records(page, 1);
  expect(record?.breaks).toMatchObject([{ kind: "reload" }]);
  expect(record?.breaks?.[0]?.length_ms).toBeGreaterThan(2500);
  expect(record?.worked_ms).toBeGreaterThan(record?.breaks?.[0]?.length_ms ?? Infinity);
});

test("a machine that slept is no pause where there is none: its time counts and is on record", async ({ page }) => {
  await start(page, sheetWith({ pauseAllowed: false }));
  await page.keyboard.press("ArrowLeft");
  await page.evaluate(() => {
    const now = Date.now.bind(Date);
    Date.now = () => now() + 300_000;
  });
  await expect(page.getByRole("timer")).toHaveText(/^5:\d\d/);
  await breakOff(page);
  await expect(page.getByRole("region", { name: "Record" })).toContainText(/forward 5:00 at 0:/);
  const [record] = await records(page, 1);
  expect(record?.clockJumps).toHaveLength(1);
  expect(record?.worked_ms).toBeGreaterThan(300_000);
});

test("on a phone who sits and the clock stay in view while the dial is", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  const task = "Take the written combination from the card. ".repeat(12).trim();
  const sheet = sheetWith();
  await start(page, { ...sheet, stations: sheet.stations.map((one) => ({ ...one, task })) });
  const dial = page.getByRole("slider", { name: "Dial" });
  await dial.evaluate((element) => element.scrollIntoView({ block: "end" }));
  await expect(dial).toBeInViewport({ ratio: 0.9 });
  await expect(page.getByText("Candidate: Orrin")).toBeInViewport({ ratio: 1 });
  const isCut = (line: HTMLElement) => line.scrollWidth > line.clientWidth;
  expect(await page.locator(".sitting-bar .sitting-person").evaluate(isCut), "the name is cut short").toBe(false);
  await expect(page.getByRole("timer")).toBeInViewport({ ratio: 1 });
  expect(await violations(page)).toEqual([]);
});

test("what a sitting missed is practiced from its result, and the record stays", async ({ page }) => {
  await start(page, sheetWith());
  await dialIt(page, [0, 4]);
  await page.keyboard.press("Enter");
  await dialLast(page);
  await page.getByRole("button", { name: "Practice these misses" }).click();
  await expect(page.getByText("Misses of Two tries", { exact: true })).toBeVisible();
  await expect(page.getByRole("region", { name: "Rules" })).toContainText("You have 1 try.");
  expect(await records(page, 1)).toMatchObject([{ marking: { verdict: "fail" } }]);
  await startHere(page);
  await dialLast(page);
  await expect(page.getByRole("region", { name: "Tries" })).toContainText("opened");
});

test("a link to another sheet ends nothing, and says what goes first", async ({ page }) => {
  await start(page, sheetWith());
  await page.keyboard.press("ArrowLeft");
  await ask(page, { ...sheetWith(), title: "Another" });
  await expect(page.getByText(/^You asked for "Another", but "Two tries" is still here\. Finish it/)).toBeVisible();
  await expect(page.getByRole("slider", { name: "Dial" })).toBeVisible();
});
