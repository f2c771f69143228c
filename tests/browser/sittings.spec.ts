import { readFile } from "node:fs/promises";
import type { Page } from "@playwright/test";
import manifest from "../../package.json" with { type: "json" };
import { SHIPPED_QUESTIONS } from "../../src/drill/questions/shippedQuestions";
import type { Sheet, SittingRules } from "../../src/drill/sheet/sheet";
import { recordHash } from "../../src/records/hashedRecord";
import { dialingStation, testSheet, zeroingStation } from "../support/testSheet";
import { LOOKS, look, violations } from "./axe";
import { expect, test } from "./page";
import { dialIt, dialLast, openSheet, start, verdict } from "./sittingByKeys";

const RULES: SittingRules = { pauseAllowed: true, onReload: "resume", clockHideable: true, timeLimit_s: 3600 };

/** Two tries at one lock, then two questions. */
const shortSheet = (rules: Partial<SittingRules> = {}): Sheet =>
  testSheet({
    title: "Short sitting",
    instructions: ["Dial it twice."],
    cautions: ["No lock in use."],
    stations: [dialingStation({ id: "open it", repetitions: 2, passMarks: { firstTime: 2 } })],
    sitting: { ...RULES, questions: { topics: [{ topic: "zeroing", count: 2 }], passMark: 2 }, ...rules },
  });

/** Answers the question on the screen by keys, right. */
const answerIt = async (page: Page) => {
  const asks = await page.locator("legend").textContent();
  const question = SHIPPED_QUESTIONS.find((one) => one.asks === asks);
  if (question === undefined) throw new Error(`no question asks "${asks}"`);
  const choice = page.getByRole("radio", { name: question.choices[question.answer] ?? "", exact: true });
  await choice.focus();
  await page.keyboard.press("Space");
  await page.getByRole("button", { name: "Answer", exact: true }).focus();
  await page.keyboard.press("Enter");
};

/** Runs in the page: a person in the logbook, which the start of a sitting has opened. */
const addPerson = async () => {
  const opening = indexedDB.open("gatefall-logbook");
  const database = await new Promise<IDBDatabase>((done) => {
    opening.onsuccess = () => done(opening.result);
  });
  const writing = database.transaction("people", "readwrite");
  writing.objectStore("people").put({ id: "p", createdAt: 1, updatedAt: 1, name: "Pelline", part: "trainee" });
  await new Promise((done) => {
    writing.oncomplete = done;
  });
  database.close();
};

/** Runs in the page: what the logbook holds. */
const logbookRows = async () => {
  const opening = indexedDB.open("gatefall-logbook");
  const database = await new Promise<IDBDatabase>((done) => {
    opening.onsuccess = () => done(opening.result);
  });
  const rows = (table: string) =>
    new Promise<unknown[]>((done) => {
      const reading = database.transaction(table).objectStore(table).getAll();
      reading.onsuccess = () => done(reading.result);
    });
  const found = { sittings: await rows("sittings"), attempts: await rows("attempts") };
  database.close();
  return found;
};

const savedRecord = async (page: Page) => {
  const downloading = page.waitForEvent("download");
  await page
    .getByRole("link", { name: /^Save the record/ })
    .first()
    .click();
  return readFile(await (await downloading).path(), "utf8");
};

const expectClean = async (page: Page) => {
  for (const one of LOOKS) {
    await look(page, one);
    expect(await violations(page), one.name).toEqual([]);
  }
};

test("a whole sitting by keyboard comes to its verdict", async ({ page }) => {
  const sheet = shortSheet();
  await openSheet(page, sheet);
  await expect(page.getByRole("region", { name: "Marking scheme" })).toContainText("At least 2 of 2 tries open");
  await start(page, sheet);
  await dialIt(page);
  await expect(page.getByRole("main")).not.toContainText(/opened|bolt back/i);
  await expect(page.getByRole("button", { name: "Next try" })).toBeFocused();
  await page.keyboard.press("Enter");
  await dialLast(page);
  await answerIt(page);
  await answerIt(page);
  await expect(verdict(page)).toHaveText("Passed.");
  await expect(page.getByText("Practice result, not a certificate.")).toBeVisible();
  const started = page.getByRole("region", { name: "Record" }).locator("time");
  await expect(started).toHaveText(/^[A-Z][a-z]+day, [A-Z][a-z]+ \d+, 20\d\d at \d\d:\d\d \S+$/);
  await expect(started).toHaveAttribute("datetime", /^20\d\d-\d\d-\d\dT[\d:.]+Z$/);
  await expect(page.getByRole("region", { name: "Questions" })).toContainText("1 of 1 right");
});

test("axe finds nothing wrong before the start and at a station", async ({ page }) => {
  const sheet = shortSheet();
  await openSheet(page, sheet);
  await expectClean(page);
  await start(page, sheet);
  await page.keyboard.press("ArrowLeft");
  await expectClean(page);
});

test("axe finds nothing wrong at a question", async ({ page }) => {
  await start(page, shortSheet());
  await dialIt(page);
  await page.keyboard.press("Enter");
  await dialLast(page);
  await page.getByRole("radio").first().check();
  await expectClean(page);
});

test("axe finds nothing wrong in a result with a replay", { tag: "@long" }, async ({ page }) => {
  await start(page, shortSheet());
  await dialIt(page, [0, 4]);
  await page.keyboard.press("Enter");
  await dialLast(page);
  await answerIt(page);
  await answerIt(page);
  await page.getByRole("button", { name: "Replay try 1" }).click();
  await expect(page.getByRole("region", { name: "Turn chart" })).toBeVisible();
  await expectClean(page);
});

test("a miss is not told before the end, in the logbook neither, and is marked", async ({ page }) => {
  await start(page, shortSheet({ questions: undefined }));
  await dialIt(page, [0, 4]);
  await expect(page.getByRole("main")).not.toContainText(/not open|ran past/i);
  await page.getByRole("link", { name: "Logbook" }).click();
  await expect(page.getByText("1 attempt, latest first")).toBeVisible();
  await page.getByRole("checkbox", { name: "misses only" }).check();
  await expect(page.getByText("No attempts.")).toBeVisible();
  await expect(page.getByText(/^Tries of a sitting under way count here after/)).toBeVisible();
  await page.getByRole("link", { name: "Progress" }).click();
  await expect(page.getByText(/^Tries of a sitting under way count here after/)).toBeVisible();
  await expect(page.getByRole("main")).not.toContainText("First-time openings");
  await page.getByRole("link", { name: "Sittings" }).first().click();
  await page.getByRole("button", { name: "Next try" }).press("Enter");
  await expect(page.getByRole("slider", { name: "Dial" })).toBeFocused();
  await dialLast(page);
  await expect(verdict(page)).toHaveText("Not passed.");
  await expect(page.getByRole("region", { name: "Tries" })).toContainText("ran past at number 2");
  await page.goto("#/logbook?view=progress");
  await expect(page.getByRole("region", { name: "First-time openings" })).toContainText("You open 1 of 2.");
  await expect(page.getByRole("region", { name: "What more attempts will show" })).toContainText(
    "Own estimates. Needs 2 more estimates",
  );
});

test("a reload in mid-try loses that try and goes on", { tag: "@long" }, async ({ page }) => {
  await start(page, shortSheet({ questions: undefined }));
  await page.keyboard.press("ArrowLeft");
  await page.reload();
  await expect(page.getByRole("status")).toHaveText(/was reloaded/);
  await expectClean(page);
  await page.getByRole("button", { name: "Go on" }).click();
  await dialLast(page);
  await expect(verdict(page)).toHaveText("Not passed.");
  await expect(page.getByRole("region", { name: "Tries" })).toContainText("lost to a reload");
});

test("a result is there again after a reload, with the same hash", async ({ page }) => {
  await start(page, shortSheet({ questions: undefined }));
  await dialIt(page);
  await page.keyboard.press("Enter");
  await dialLast(page);
  const record = page.getByRole("region", { name: "Record" });
  await expect(record).toContainText("this record");
  await expect(record).toContainText(manifest.version);
  const before = await record.textContent();
  await page.reload();
  await expect(record).toHaveText(before ?? "");
});

test("a sheet may end a sitting at a reload: it is recorded as broken off", async ({ page }) => {
  await start(page, shortSheet({ onReload: "broken-off" }));
  await page.keyboard.press("ArrowLeft");
  await page.reload();
  await expect(verdict(page)).toHaveText("Broken off before the end.");
});

test("a sitting that is broken off is recorded", { tag: "@long" }, async ({ page }) => {
  await start(page, shortSheet());
  await dialIt(page);
  await page.getByRole("button", { name: "Break off" }).click();
  await page.getByRole("button", { name: "End it" }).click();
  await expect(verdict(page)).toHaveText("Broken off before the end.");
  await page.getByRole("button", { name: "Done" }).press("Enter");
  await expect(page.getByRole("heading", { name: "Sittings", exact: true })).toBeFocused();
  await expect(page.getByRole("region", { name: "Earlier sittings" })).toContainText("Broken off before the end.");
  await expectClean(page);
});

test("breaking off asks first: the safe answer has the focus, Escape gives it, and the address is left behind", async ({
  page,
}) => {
  await start(page, shortSheet());
  await page.setViewportSize({ width: 390, height: 844 });
  const place = () => page.getByRole("slider", { name: "Dial", includeHidden: true }).boundingBox();
  const before = await place();
  const breakOff = page.getByRole("button", { name: "Break off" });
  await breakOff.press("Enter");
  await expect(page.getByRole("button", { name: "Stay" })).toBeFocused();
  expect(await place(), "the dial stays where it was").toEqual(before);
  await page.keyboard.press("Escape");
  await expect(breakOff).toBeFocused();
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "End it" }).click();
  await page.getByRole("button", { name: "Done" }).click();
  await expect(page).toHaveURL(/#\/sittings$/);
  await page.getByRole("link", { name: "Short sitting", exact: true }).click();
  await expect(verdict(page)).toHaveText("Broken off before the end.");
  await page.getByRole("link", { name: "All sheets to sit" }).click();
  await expect(page.getByRole("region", { name: "Choose a sheet" })).toBeVisible();
});

test("an own sheet is there to be sat; one that must be fixed is counted", async ({ page }) => {
  await page.goto("#/sheets");
  await page.getByRole("button", { name: "New sheet" }).click();
  await page.getByRole("textbox", { name: "Title", exact: true }).fill("Mine");
  await page.getByRole("link", { name: "All sheets" }).click();
  await page.getByRole("button", { name: "New sheet" }).click();
  await page.getByRole("button", { name: "Remove: Dial the combination" }).click();
  await page.getByRole("link", { name: "Sittings" }).click();
  const choice = page.getByRole("region", { name: "Choose a sheet" });
  await expect(choice.getByText("1 sheet of yours cannot be used yet")).toBeVisible();
  await choice.getByRole("button", { name: /^Mine/ }).click();
  await expect(page.getByText("You have 10 tries.")).toBeVisible();
});

test("a saved record checks, and a changed one does not", async ({ page }) => {
  await start(page, shortSheet({ questions: undefined }));
  await dialIt(page, [0, 4]);
  await page.getByRole("button", { name: "Break off" }).click();
  await page.getByRole("button", { name: "End it" }).click();
  const text = await savedRecord(page);
  await page.getByRole("button", { name: "Done" }).click();
  const check = page.getByRole("region", { name: "Check a record" });
  await check.getByRole("textbox").fill(text);
  await check.getByRole("button", { name: "Check it" }).click();
  await expect(check.getByRole("status")).toHaveText(/^The record is sound/);
  await check.getByRole("textbox").fill(text.replace('"opened": false', '"opened": true'));
  await check.getByRole("button", { name: "Check it" }).click();
  await expect(check.getByRole("alert")).toContainText("was changed");
  // Records of that time brought no recordings; with them it would be a copy of the one in the logbook.
  const { motions: _none, ...record } = JSON.parse(text).record;
  const earlier = { ...record, appVersion: "0.0.9", profileHashes: ["0".repeat(64)] };
  const sha256 = recordHash(earlier);
  await check.getByRole("textbox").fill(JSON.stringify({ sha256, record: earlier }));
  await check.getByRole("button", { name: "Check it" }).click();
  await expect(check.getByRole("status").first()).toContainText("Version 0.0.9 made it");
  await expect(check.getByRole("alert")).toBeHidden();
  await check.getByRole("textbox").fill("{}");
  await check.getByRole("button", { name: "Check it" }).click();
  await expect(check.getByRole("alert")).toContainText("this file holds no sitting");
});

test("zero is set in a sitting without a second chance", async ({ page }) => {
  await start(
    page,
    testSheet({ stations: [zeroingStation({ repetitions: 1, passMarks: { zeroed: 1 } })], sitting: RULES }),
  );
  await expect(page.getByRole("button", { name: /^Again/ })).toHaveCount(0);
  await expectClean(page);
  await page.keyboard.press("ArrowRight");
  await page.getByRole("button", { name: "End this try" }).click();
  await expect(page.getByRole("region", { name: "Tries" })).toContainText("turning right: open · turning left: open");
});

test("the clock can be hidden, and a sitting paused between tries", async ({ page }) => {
  await start(page, shortSheet());
  await page.getByRole("button", { name: "Hide the clock" }).click();
  await expect(page.getByRole("timer")).toHaveText("clock hidden");
  await page.getByRole("button", { name: "Pause" }).click();
  await expect(page.getByRole("status")).toHaveText(/^You have paused/);
  await page.getByRole("button", { name: "Go on" }).click();
  await expect(page.getByRole("slider", { name: "Dial" })).toBeFocused();
});

test("a page that is killed in mid-sitting is taken up by the next one", async ({ page, context }) => {
  await start(page, shortSheet({ questions: undefined }));
  await dialIt(page);
  await page.keyboard.press("Enter");
  await page.keyboard.press("ArrowLeft");
  await page.close({ runBeforeUnload: false });
  const next = await context.newPage();
  await next.goto("#/sittings");
  await expect(next.getByRole("main")).toContainText("2 of 2 tries done, 1 of them lost");
  await next.getByRole("button", { name: "Go on" }).click();
  await expect(next.getByRole("region", { name: "Tries" })).toContainText("opened");
});

test("a sitting and its tries go to the logbook of whoever practices", async ({ page }) => {
  await openSheet(page, shortSheet());
  await page.evaluate(addPerson);
  await page.reload();
  await start(page, shortSheet());
  await dialIt(page);
  await page.getByRole("button", { name: "Break off" }).click();
  await page.getByRole("button", { name: "End it" }).click();
  await expect(page.getByRole("region", { name: "Record" })).toContainText("Pelline");
  await expect
    .poll(() => page.evaluate(logbookRows))
    .toMatchObject({ sittings: [{ state: "broken-off", personId: "p" }], attempts: [{ opened: true, personId: "p" }] });
});

test("a sitting goes on in one tab only", async ({ page, context }) => {
  await start(page, shortSheet());
  const other = await context.newPage();
  await other.goto("#/sittings");
  await expect(other.getByRole("button", { name: "Go on" })).toBeVisible();
  await expect(page.getByRole("alert")).toContainText("another tab has opened it");
});

test("a shipped sheet has an address, and a link that is none is told", async ({ page }) => {
  await page.goto("#/sittings?sheet=friday-sitting");
  await expect(page.getByText("You have 34 tries, then 14 questions.")).toBeVisible();
  await page.getByRole("button", { name: "Choose another sheet" }).click();
  await page.getByRole("textbox", { name: "Link to a sheet" }).fill("monday");
  await page.getByRole("button", { name: "Open this sheet" }).click();
  await expect(page.getByRole("alert")).toContainText("carries no drill sheet");
});

test("on a phone nothing runs off the screen", { tag: "@long" }, async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  const fits = () => page.evaluate(() => document.documentElement.scrollWidth <= innerWidth);
  await page.goto("#/sittings");
  await page.getByRole("heading", { name: /^Choose a sheet/ }).waitFor();
  expect(await fits()).toBe(true);
  await start(page, shortSheet({ questions: undefined }));
  expect(await fits()).toBe(true);
  await dialIt(page);
  await page.keyboard.press("Enter");
  await dialLast(page);
  await page.getByRole("button", { name: "Replay try 1" }).click();
  expect(await fits()).toBe(true);
  await expectClean(page);
});
