import { join } from "node:path";
import type { Page } from "@playwright/test";
import { cameraPlaying, shootInto } from "../support/film/fakeCamera";
import { placesToTap, smallOrdinaryFilm } from "../support/film/ordinaryScene";
import { violations } from "./axe";
import { ORDINARY_TITLE, OrdinarySetupPage } from "./ordinarySetup";
import { expect, test } from "./page";

/*
 * The setup of an ordinary dial, up to the slow turn, before the browser's fake camera. No real camera was tried.
 */

const FILM = join(import.meta.dirname, "../../test-results/films/ordinary-at-rest.y4m");
const RESTING = smallOrdinaryFilm([], 4000);
const PLACES = placesToTap(RESTING);

test.use({ launchOptions: cameraPlaying(FILM), permissions: ["camera"] });

test.beforeAll(() => {
  test.setTimeout(180_000);
  shootInto(FILM, RESTING);
});

const main = (page: Page) => page.getByRole("main");
const heading = (page: Page, name: string) => page.getByRole("heading", { name });

const hasCamera = (page: Page) =>
  page.evaluate(() => [...document.querySelectorAll("video")].some(({ srcObject }) => srcObject !== null));

test("asks first, with the camera off, and a no leads back", async ({ page }) => {
  const setup = new OrdinarySetupPage(page);
  await setup.choose();
  await expect(heading(page, "Is this a practice lock whose combination may be recorded?")).toBeFocused();
  await expect(main(page)).toContainText("A recording of a dial is its combination");
  expect(await hasCamera(page)).toBe(false);
  expect(await violations(page)).toEqual([]);
  await page.getByRole("button", { name: "No: leave the camera off" }).click();
  await expect(main(page)).toContainText("It follows only a practice lock whose combination may be recorded.");
  expect(await hasCamera(page)).toBe(false);
  await page.getByRole("button", { name: "Connect again" }).click();
  await setup.question.waitFor();
});

test("the marks are put on the picture by keys, and the dial is found", async ({ page }) => {
  const setup = new OrdinarySetupPage(page);
  await setup.choose();
  await setup.agree();
  await expect(heading(page, "Put two marks on the picture")).toBeFocused();
  await expect(main(page)).toContainText("Pictures never leave this device and are not stored.");
  const middle = setup.mark("Middle of the knob");
  await expect(middle).toHaveAttribute("aria-valuetext", "50.0 % from the left, 50.0 % from the top");
  expect(await violations(page)).toEqual([]);
  // Nowhere near the rim: it says so, and the marks stay where they are.
  const index = setup.mark("Tip of the index");
  await index.focus();
  for (let k = 0; k < 6; k++) await page.keyboard.press("Shift+ArrowDown");
  await setup.find();
  await expect(main(page).getByRole("alert")).toContainText(/./, { timeout: 20_000 });
  await setup.moveByKeys(middle, PLACES.middle, { x: 0.5, y: 0.5 });
  await expect(main(page)).toContainText("Tap the tip of the index");
  await setup.moveByKeys(index, PLACES.index, { x: 0.5, y: 0.45 });
  await expect(main(page)).toContainText("Look at both marks.");
  await setup.find();
  await expect(heading(page, "Turn the dial once round, slowly")).toBeFocused({ timeout: 20_000 });
  await expect(main(page)).toContainText("The dial is found.");
  await expect(main(page)).toContainText("Start turning.");
  await expect(page.getByRole("progressbar", { name: "Slow turn" })).toBeVisible();
  expect(await violations(page)).toEqual([]);
  // Off the page the camera goes off, and the marks are remembered for it, where they were found right.
  await page.goto("#/start");
  await expect(page.locator("video")).toHaveCount(0);
  await setup.choose();
  await setup.agree();
  const x = (100 * PLACES.index.x).toFixed(0);
  await expect(index).toHaveAttribute("aria-valuenow", x);
  await expect(main(page)).toContainText("The marks are where they fitted last time.");
  await setup.find();
  await expect(main(page)).toContainText("The dial is found.", { timeout: 20_000 });
});

test("two taps, and a drag that corrects one, do the same", async ({ page }) => {
  const setup = new OrdinarySetupPage(page);
  await setup.choose();
  await setup.agree();
  await expect(main(page)).toContainText("Tap the middle of the knob.");
  const missed = { x: PLACES.index.x + 0.1, y: PLACES.index.y - 0.05 };
  const at = await setup.tap({ ...PLACES, index: missed });
  await expect(main(page)).toContainText("Look at both marks.");
  await page.mouse.move(...at(missed));
  await page.mouse.down();
  await page.mouse.move(...at(PLACES.index), { steps: 4 });
  await page.mouse.up();
  await setup.find();
  await expect(main(page)).toContainText("The dial is found.", { timeout: 20_000 });
});

test("on the bench it is not connected, but leads to its setup", async ({ page, bench }) => {
  await bench.open({ profile: "small-three-wheel" });
  await page.getByRole("button", { name: /^More/ }).click();
  await page.getByRole("link", { name: `Set up: ${ORDINARY_TITLE}` }).click();
  await expect(page).toHaveURL(/#\/dial\?.*graduations=60/);
});

test("a second page does not take the camera from the first, and is asked nothing", async ({ page, context }) => {
  const setup = new OrdinarySetupPage(page);
  await setup.choose();
  await setup.agree();
  await setup.picture.waitFor();
  const other = await context.newPage();
  await other.goto("#/dial");
  await other.getByRole("button", { name: `Choose: ${ORDINARY_TITLE}` }).click();
  await other.getByRole("button", { name: "Connect", exact: true }).click();
  await expect(other.getByRole("alert")).toContainText("Another page of Gatefall holds the dial.");
  await expect(new OrdinarySetupPage(other).question).toHaveCount(0);
  // Let go of there, it can be had here.
  await page.getByRole("button", { name: "Choose another source" }).click();
  await other.getByRole("button", { name: "Connect again" }).click();
  await new OrdinarySetupPage(other).question.waitFor();
});

test("a camera that is unplugged, or off while the page is in the background, has its sentence and leads back to the question", async ({
  page,
}) => {
  const setup = new OrdinarySetupPage(page);
  await setup.choose();
  await setup.agree();
  await setup.picture.waitFor();
  await page.locator("main video").evaluate((video: HTMLVideoElement) => {
    for (const track of (video.srcObject as MediaStream).getTracks()) track.dispatchEvent(new Event("ended"));
  });
  await expect(page.getByRole("alert")).toContainText("The camera was unplugged.");
  await expect(page.locator("video")).toHaveCount(0);
  await page.getByRole("button", { name: "Connect again" }).click();
  await setup.agree();
  await setup.picture.waitFor();
  await page.evaluate(() => {
    Object.defineProperty(document, "visibilityState", { value: "hidden", configurable: true });
    document.dispatchEvent(new Event("visibilitychange"));
  });
  await expect(page.getByRole("alert")).toContainText("This page was in the background, so its camera was turned off.");
  await expect(page.locator("video")).toHaveCount(0);
});
