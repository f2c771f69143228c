import { test as base, expect, type Page } from "@playwright/test";
import type { Sheet, SittingRules } from "../../../src/drill/sheet/sheet";
import { dialingStation, testSheet } from "../../support/testSheet";
import { Bench } from "../bench";
import { databaseRows } from "../databaseRows";
import { KeyHand } from "../hands";
import { KillableBrowser } from "../killableBrowser";
import { dialIt, dialLast, start, verdict } from "../sittingByKeys";

/*
 * The browser is killed outright, or one page of it crashes, while a hand is on the dial; then the app is opened again.
 * A kill comes once the database has said that a record is stored: some hundredths of a second after its end.
 */

const test = base.extend<{ readonly browserToKill: KillableBrowser }>({
  browserToKill: async ({ baseURL }, use, info) => {
    const browser = new KillableBrowser(info.outputPath("profile"), baseURL ?? "");
    await use(browser);
    await browser.close();
  },
});

const threeTries = (onReload: SittingRules["onReload"]): Sheet =>
  testSheet({
    title: "Three tries",
    stations: [dialingStation({ repetitions: 3, passMarks: { firstTime: 3 } })],
    sitting: { pauseAllowed: true, onReload, clockHideable: true },
  });

/** Turns the dial on without an end in sight, and waits until the logbook has some of it. */
async function beginAttempt(page: Page): Promise<void> {
  const hand = new KeyHand(new Bench(page), 100);
  await hand.turnBy(230);
  await hand.turnBy(-120);
  await expectStored(page, { isUnfinished: true });
}

/** Waits until the database has an attempt. */
async function expectStored(page: Page, attempt: object): Promise<void> {
  await expect
    .poll(() => page.evaluate(databaseRows, "attempts"), { message: "the database has it" })
    .toContainEqual(expect.objectContaining({ ...attempt }));
}

/** Run in the page: its own text of the sitting under way, read and put back. */
const sittingText = () => localStorage.getItem("gatefall.sitting") ?? "";
const putSittingText = (text: string) => localStorage.setItem("gatefall.sitting", text);

const attempts = (page: Page) => page.getByRole("table", { name: "Attempts, latest first" }).locator("tbody tr");
const sittings = (page: Page) => page.getByRole("table", { name: "Sittings, latest first" }).locator("tbody tr");
const goOn = (page: Page) => page.getByRole("button", { name: "Go on" }).click();

test("a browser killed in mid-attempt has the attempts that ended, and the one under way as unfinished", async ({
  browserToKill,
}) => {
  const page = await browserToKill.open("#/bench?seed=5");
  const bench = new Bench(page);
  await dialLast(page);
  await expect(bench.state).toHaveText(/^Opened/);
  await page.keyboard.press("r");
  await beginAttempt(page);
  await browserToKill.kill();

  const again = await browserToKill.open("#/logbook");
  await expect(attempts(again)).toHaveText([/Unfinished/, /Opened/]);
  await expect(again.getByRole("status").filter({ hasText: "2 attempts, latest first" })).toBeVisible();
  await attempts(again).first().getByRole("button").click();
  await expect(again.getByRole("region", { name: "What happened" })).toContainText("It counts nowhere");
  await expect(again.getByRole("slider", { name: "Time in the replay" })).toBeVisible();
  await again.goto("#/logbook?view=progress");
  await expect(again.getByRole("region", { name: "First-time openings" })).toContainText("You open 1 of 1.");
});

test("a sitting goes on after its browser was killed, with no try lost but the one under way, and none twice", async ({
  browserToKill,
}) => {
  const page = await browserToKill.open("#/bench");
  await start(page, threeTries("resume"));
  await dialIt(page);
  await page.keyboard.press("Enter");
  await beginAttempt(page);
  await browserToKill.kill();

  const again = await browserToKill.open("#/logbook?view=sittings");
  await expect(sittings(again)).toHaveText([/Three tries.*Under way/]);
  await again.goto("#/logbook");
  await expect(attempts(again)).toHaveText([/In a sitting/, /In a sitting/]);
  await again.goto("#/sittings");
  await expect(again.getByRole("main")).toContainText("2 of 3 tries done, 1 of them lost");
  await goOn(again);
  await dialLast(again);
  await expect(verdict(again)).toHaveText("Not passed.");
  await expect(again.getByRole("button", { name: /^Replay/ })).toHaveCount(2);
  await again.goto("#/logbook?view=sittings");
  await expect(sittings(again)).toHaveText([/Three tries.*Not passed.*3 tries, 1 lost/]);
  await again.goto("#/logbook");
  await expect(attempts(again)).toHaveText([/Opened/, /Unfinished/, /Opened/]);
});

test("a sitting whose browser was killed is broken off where its sheet says so", async ({ browserToKill }) => {
  const page = await browserToKill.open("#/bench");
  await start(page, threeTries("broken-off"));
  await dialIt(page);
  await expectStored(page, { opened: true });
  await browserToKill.kill();

  const again = await browserToKill.open("#/sittings");
  await expect(verdict(again)).toHaveText("Broken off before the end.");
  await again.goto("#/logbook?view=sittings");
  await expect(sittings(again)).toHaveText([/Three tries.*Broken off.*1 try/]);
  await again.goto("#/logbook");
  await expect(attempts(again)).toHaveText([/Opened/]);
});

test("a finished sitting stays finished and failed when its browser is killed, whatever the page's text still says", async ({
  browserToKill,
}) => {
  const page = await browserToKill.open("#/bench");
  await start(page, threeTries("resume"));
  await dialIt(page, [0, 4]);
  const text = await page.evaluate(sittingText);
  await page.keyboard.press("Enter");
  await dialIt(page, [0, 4]);
  await page.keyboard.press("Enter");
  await dialLast(page);
  await expect(verdict(page)).toHaveText("Not passed.");
  const finished = [{ state: "finished", verdict: "failed" }];
  await expect.poll(() => page.evaluate(databaseRows, "sittings")).toMatchObject(finished);
  const before = await page.evaluate(databaseRows, "attempts");
  await browserToKill.kill();

  const again = await browserToKill.open("#/bench");
  // A killed browser may lose the last minute of its texts; how much is chance, so the test sees to it.
  await again.evaluate(putSittingText, text);
  await again.goto("#/sittings");
  await expect(again.getByRole("main")).toContainText(/Choose a sheet|Not passed\.|Go on/);
  await expect(again.getByRole("button", { name: /^Go on/ })).toHaveCount(0);
  await expect(verdict(again)).toHaveText("Not passed.");
  expect(await again.evaluate(databaseRows, "sittings")).toMatchObject(finished);
  expect(await again.evaluate(databaseRows, "attempts")).toEqual(before);
  await again.getByRole("button", { name: "Done" }).click();
  await again.reload();
  await expect(again.getByRole("region", { name: "Choose a sheet" })).toBeVisible();
});

test("a page that crashes loses nothing of a sitting, and the next page goes on", async ({ page, context }) => {
  await page.goto("#/bench");
  await start(page, threeTries("resume"));
  await dialIt(page, [0, 4]);
  const crashed = page.waitForEvent("crash");
  const session = await context.newCDPSession(page);
  // The page is gone before it can answer.
  session.send("Page.crash").catch(() => undefined);
  await crashed;

  const next = await context.newPage();
  await next.goto("#/sittings");
  await expect(next.getByRole("main")).toContainText("1 of 3 tries done.");
  await goOn(next);
  await dialIt(next);
  await next.keyboard.press("Enter");
  await dialLast(next);
  await expect(verdict(next)).toHaveText("Not passed.");
  await next.goto("#/logbook");
  await expect(attempts(next)).toHaveText([/Opened/, /Opened/, /Did not open/]);
});
