import { join } from "node:path";
import type { Locator, Page } from "@playwright/test";
import { cameraPlaying, shootInto } from "../support/film/fakeCamera";
import { placesToTap, smallOrdinaryFilm } from "../support/film/ordinaryScene";
import { violations } from "./axe";
import { expect, test } from "./page";

/*
 * The setup of an ordinary dial, up to the slow turn, before the browser's fake camera. No real camera was tried.
 */

const FILM = join(import.meta.dirname, "../../test-results/films/ordinary-at-rest.y4m");
const RESTING = smallOrdinaryFilm([], 4000);
const PLACES = placesToTap(RESTING);
const TITLE = "Dial of a practice lock, by camera";

test.use({ launchOptions: cameraPlaying(FILM), permissions: ["camera"] });

test.beforeAll(() => {
  test.setTimeout(180_000);
  shootInto(FILM, RESTING);
});

const device = (page: Page) => page.getByRole("region", { name: "Your device" });

async function choose(page: Page) {
  await page.goto("#/dial");
  await page.getByRole("button", { name: `Choose: ${TITLE}` }).click();
  await page.getByRole("button", { name: "Connect", exact: true }).click();
  await expect(device(page).getByRole("group", { name: /^Is this a practice lock/ })).toBeVisible();
}

type Place = (typeof PLACES)["middle"];

/** Steps of the arrow keys from one place of the picture to another, each half a percent. */
const stepsTo = (to: Place, from: Place) => [
  ...Array<string>(Math.round(Math.abs(to.x - from.x) / 0.005)).fill(to.x < from.x ? "ArrowLeft" : "ArrowRight"),
  ...Array<string>(Math.round(Math.abs(to.y - from.y) / 0.005)).fill(to.y < from.y ? "ArrowUp" : "ArrowDown"),
];

async function moveByKeys(page: Page, mark: Locator, to: Place, from: Place) {
  await mark.focus();
  for (const key of stepsTo(to, from)) await page.keyboard.press(key);
}

const hasCamera = (page: Page) =>
  page.evaluate(() => [...document.querySelectorAll("video")].some(({ srcObject }) => srcObject !== null));

test("asks first, with the camera off, and a no leads back", async ({ page }) => {
  await choose(page);
  await expect(device(page)).toContainText("A recording of a dial is its combination");
  expect(await hasCamera(page)).toBe(false);
  expect(await violations(page)).toEqual([]);
  await device(page).getByRole("button", { name: "No: leave the camera off" }).click();
  await expect(device(page)).toContainText("It follows only a practice lock whose combination may be recorded.");
  expect(await hasCamera(page)).toBe(false);
  await page.getByRole("button", { name: "Connect again" }).click();
  await expect(device(page).getByRole("group", { name: /^Is this a practice lock/ })).toBeVisible();
});

test("the marks are put on the picture by keys, and the dial is found", async ({ page }) => {
  await choose(page);
  await page.getByRole("button", { name: /^Yes, a practice lock/ }).click();
  await expect(device(page)).toContainText("Pictures never leave this device and are not stored.");
  const middle = device(page).getByRole("slider", { name: "Middle of the knob" });
  await expect(middle).toHaveAttribute("aria-valuetext", "50.0 % from the left, 50.0 % from the top");
  expect(await violations(page)).toEqual([]);
  // Nowhere near the rim: it says so, and the marks stay where they are.
  const index = device(page).getByRole("slider", { name: "Tip of the index" });
  await index.focus();
  for (let k = 0; k < 6; k++) await page.keyboard.press("Shift+ArrowDown");
  await device(page).getByRole("button", { name: "Find the dial" }).click();
  await expect(device(page).getByRole("alert")).toContainText(/./, { timeout: 20_000 });
  await moveByKeys(page, middle, PLACES.middle, { x: 0.5, y: 0.5 });
  await moveByKeys(page, index, PLACES.index, { x: 0.5, y: 0.45 });
  await device(page).getByRole("button", { name: "Find the dial" }).click();
  await expect(device(page)).toContainText("The dial is found.", { timeout: 20_000 });
  await expect(device(page).getByRole("progressbar", { name: "Slow turn" })).toBeVisible();
  expect(await violations(page)).toEqual([]);
  if (process.env.SHOTS !== undefined) await page.screenshot({ path: join(process.env.SHOTS, "ordinary-turn.png") });
  // Off the page the camera goes off, and the marks are remembered for it, where they were found right.
  await page.goto("#/start");
  await expect(page.locator("video")).toHaveCount(0);
  await choose(page);
  await page.getByRole("button", { name: /^Yes, a practice lock/ }).click();
  const x = (100 * PLACES.index.x).toFixed(0);
  await expect(device(page).getByRole("slider", { name: "Tip of the index" })).toHaveAttribute("aria-valuenow", x);
});

test("two taps, and a drag that corrects one, do the same", async ({ page }) => {
  await choose(page);
  await page.getByRole("button", { name: /^Yes, a practice lock/ }).click();
  const picture = device(page).getByTestId("marks");
  await expect(device(page)).toContainText("Tap the middle of the knob.");
  const box = async () => (await picture.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
  // The picture has its size once the first frame is there.
  await expect.poll(async () => (await box()).height).toBeGreaterThan(300);
  await picture.scrollIntoViewIfNeeded();
  const { x, y, width, height } = await box();
  const at = (place: { readonly x: number; readonly y: number }) =>
    [x + place.x * width, y + place.y * height] as const;
  await page.mouse.click(...at(PLACES.middle));
  await expect(device(page)).toContainText("Tap the tip of the index");
  await page.mouse.click(...at({ x: PLACES.index.x + 0.1, y: PLACES.index.y - 0.05 }));
  await expect(device(page)).toContainText("Look at both marks.");
  await page.mouse.move(...at({ x: PLACES.index.x + 0.1, y: PLACES.index.y - 0.05 }));
  await page.mouse.down();
  await page.mouse.move(...at(PLACES.index), { steps: 4 });
  await page.mouse.up();
  if (process.env.SHOTS !== undefined) await page.screenshot({ path: join(process.env.SHOTS, "ordinary-marks.png") });
  await device(page).getByRole("button", { name: "Find the dial" }).click();
  await expect(device(page)).toContainText("The dial is found.", { timeout: 20_000 });
});

test("on the bench it is not connected, but leads to its setup", async ({ page, bench }) => {
  await bench.open({ profile: "small-three-wheel" });
  await page.getByRole("button", { name: /^More/ }).click();
  await page.getByRole("link", { name: `Set up: ${TITLE}` }).click();
  await expect(page).toHaveURL(/#\/dial\?.*graduations=60/);
});
