import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";
import { LOOKS, look, violations } from "./axe";
import { expect, test } from "./page";
import { StubPort } from "./stubPort";

/*
 * The setup of a dial in the hand. The browser's serial ports are a stub: no real port, board or encoder was tried.
 */

/** Steps of the encoder in a graduation of a dial of 100. */
const STEPS = 24;

const task = (page: Page) => page.locator("[aria-labelledby=setup-task]");
const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();

/** An encoder that is connected, its 0 set and its direction seen. */
async function toChecks(page: Page, port: StubPort) {
  await press(page, "Choose: Encoder on a serial line");
  await press(page, "Connect");
  await expect(page.getByText("Status: waiting for it to answer")).toBeVisible();
  await port.start();
  await press(page, "Go on to zero");
  await port.turn(7 * STEPS);
  await press(page, "This is 0");
  await port.turn(12 * STEPS);
  await expect(task(page)).toContainText("The numbers went up.");
  await press(page, "Go on to the checks");
}

test("an encoder is set up by three checks, turns the bench then, and is remembered", async ({ page, bench }) => {
  const port = await StubPort.on(page);
  await bench.open({ profile: "three-wheel" });
  await page.getByRole("button", { name: /^More/ }).click();
  await page.getByRole("link", { name: "Set up a dial" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Set up a dial in your hand" })).toBeVisible();
  await toChecks(page, port);
  await expect(task(page).getByRole("status")).toHaveText("Now: Turn left to 25, and stop.");
  await port.turn(13.25 * STEPS);
  await expect(task(page)).toContainText("0.3 graduations left of 25: agrees");
  await port.turn(-50.75 * STEPS);
  await expect(task(page)).toContainText("0.5 graduations right of 75: near");
  await port.turn(20 * STEPS);
  await port.turn(5.5 * STEPS);
  await expect(task(page)).toContainText("On 0: agrees");
  await expect(task(page)).toContainText("The stops are off by up to 0.5 graduations.");
  expect(await violations(page)).toEqual([]);
  await press(page, "Finish the setup");
  await expect(task(page)).toContainText(/Noise at rest0\.0\d graduations/);
  await page.getByRole("link", { name: "To the bench" }).click();
  await expect(page).toHaveURL(/#\/bench\?.*profile=three-wheel/);
  const before = await bench.reading();
  await port.turn(10 * STEPS);
  await bench.expectReading(before + 10, 100);
  await page.goto("#/dial");
  await press(page, "Choose another source");
  await expect(page.getByText(/Set up on .*Largest error of its stops: 0\.5 graduations\./)).toBeVisible();
});

test("a wrong direction is seen, changed, and does not change where the dial is", async ({ page }) => {
  const port = await StubPort.on(page);
  await page.goto("#/dial");
  await press(page, "Choose: Encoder on a serial line");
  await press(page, "Connect");
  await expect(page.getByText("Status: waiting for it to answer")).toBeVisible();
  await port.start();
  await press(page, "Go on to zero");
  await press(page, "This is 0");
  await port.turn(-10 * STEPS);
  await expect(task(page)).toContainText("The numbers went down.");
  await expect(page.getByRole("button", { name: "Go on to the checks" })).toBeDisabled();
  await press(page, "Change the direction");
  await expect(task(page)).toContainText("The numbers went up.");
  await expect(page.getByText("10.0", { exact: true })).toBeVisible();
  await port.turn(-5 * STEPS);
  await expect(page.getByText("15.0", { exact: true })).toBeVisible();
});

test("a stop by the other turn, a pulled plug and one plugged in again each have their sentence", async ({ page }) => {
  const port = await StubPort.on(page);
  await page.goto("#/dial?graduations=60");
  await toChecks(page, port);
  await port.turn(40 * STEPS);
  await port.turn(-27 * STEPS);
  await expect(task(page).getByRole("status")).toContainText(
    "You came to 15 by the other turn. Go on to 5, then turn left to 15.",
  );
  await port.pull();
  await expect(page.getByRole("alert")).toContainText("The encoder was unplugged.");
  await expect(page.getByRole("button", { name: "I have stopped on 15" })).toBeDisabled();
  await expect(page.getByRole("button", { name: "Connect again" })).toBeVisible();
  await port.plugIn();
  await expect(page.getByText("Status: waiting for it to answer")).toBeVisible();
  await port.startAnew();
  await expect(page.getByRole("alert")).toContainText("connected again");
  await expect(page.getByRole("alert")).toContainText("Set 0 again, then check again.");
  await press(page, "I have read it");
  await expect(page.getByRole("button", { name: "I have stopped on 15" })).toBeEnabled();
});

test("where a port has no board behind it, another can be chosen; nothing is called 0 while the board is gone", async ({
  page,
}) => {
  const port = await StubPort.on(page);
  await page.goto("#/dial");
  await press(page, "Choose: Encoder on a serial line");
  await press(page, "Connect");
  await expect(page.getByRole("alert")).toContainText("Connect again and choose another port.", { timeout: 10_000 });
  expect(await violations(page)).toEqual([]);
  await press(page, "Connect again");
  await expect(page.getByRole("alert")).toHaveCount(0);
  await port.start();
  await press(page, "Go on to zero");
  const isZero = page.getByRole("button", { name: "This is 0" });
  await expect(isZero).toBeEnabled();
  await port.pull();
  await expect(isZero).toBeDisabled();
  await port.plugIn();
  await port.startAnew();
  await expect(isZero).toBeEnabled();
});

test("the whole setup goes by keys alone, and each step says where it begins", async ({ page }) => {
  const port = await StubPort.on(page);
  await page.goto("#/dial");
  const go = async (name: string) => {
    const button = page.getByRole("button", { name, exact: true });
    await expect(button).toBeEnabled();
    for (let tab = 0; tab < 40 && !(await button.evaluate((one) => one === document.activeElement)); tab++) {
      await page.keyboard.press("Tab");
    }
    await expect(button).toBeFocused();
    await page.keyboard.press("Enter");
  };
  await go("Choose: Encoder on a serial line");
  await expect(page.getByRole("heading", { name: "Connect it" })).toBeFocused();
  await go("Connect");
  await expect(page.getByText("Status: waiting for it to answer")).toBeVisible();
  // What was pressed is another button now, and has kept the focus.
  await expect(page.getByRole("button", { name: "Go on to zero" })).toBeFocused();
  await port.start();
  await go("Go on to zero");
  await expect(page.getByRole("heading", { name: /Say where 0 is/ })).toBeFocused();
  await go("This is 0");
  await go("Set 0 again");
  await expect(page.getByRole("heading", { name: /Say where 0 is/ })).toBeFocused();
  await go("This is 0");
  await port.turn(12 * STEPS);
  await go("Go on to the checks");
  await expect(page.getByRole("heading", { name: "Check three stops" })).toBeFocused();
  await port.turn(3 * STEPS);
  await go("I have stopped on 25");
  await go("Check again");
  await expect(page.getByRole("heading", { name: "Check three stops" })).toBeFocused();
  for (const number of [25, 75, 0]) {
    await port.turn(3 * STEPS);
    await go(`I have stopped on ${number}`);
  }
  await go("Finish the setup");
  await expect(page.getByRole("heading", { name: "Your dial is set up" })).toBeFocused();
});

test("both sheets of a printed dial are saved to be printed, by their real size", async ({ page }) => {
  await page.goto("#/dial?graduations=60");
  await page.getByRole("link", { name: "Print and build a dial" }).click();
  const saved = async (name: string | RegExp) => {
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name }).click();
    return readFileSync(await (await download).path(), "utf8");
  };
  expect(await saved("Save the base sheet")).toContain('width="210mm" height="297mm"');
  await page.getByLabel("Paper").selectOption("Letter");
  const disc = await saved("Save the disc");
  expect(disc).toContain('width="215.9mm" height="279.4mm"');
  expect(disc).toMatch(/>55</);
  expect(disc).not.toMatch(/>90</);
});

for (const address of ["#/dial", "#/dial?view=print"]) {
  test(`axe finds nothing wrong on ${address}, light or dark, and nothing is wider than a phone`, async ({ page }) => {
    for (const one of LOOKS) {
      await look(page, one);
      await page.goto(address);
      await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
      expect(await violations(page), one.name).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), one.name).toBe(true);
    }
  });
}

test("start page, words and a sheet with a rule for a real dial lead to the setup, and it knows the way back", async ({
  page,
}) => {
  const link = page.getByRole("link", { name: "Set up a real dial" });
  for (const from of ["#/start", "#/words?word=real-dial", "#/sittings?sheet=friday-sitting"]) {
    await page.goto(from);
    await link.click();
    await expect(page).toHaveURL(/#\/dial\?back=/);
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
    const back = new URL(page.url()).hash.split("back=")[1] ?? "";
    expect(from).toContain(decodeURIComponent(back));
  }
  await page.goto("#/sittings?sheet=past-it");
  await expect(page.getByRole("button", { name: "I have read it" })).toBeVisible();
  await expect(link).toHaveCount(0);
});
