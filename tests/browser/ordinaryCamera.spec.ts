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

const row = (page: Page) => page.getByRole("listitem").filter({ hasText: TITLE });

async function choose(page: Page) {
  await page.getByRole("button", { name: /^More/ }).click();
  await page.getByRole("button", { name: `Connect: ${TITLE}` }).click();
  await expect(row(page).getByRole("group", { name: /^Is this a practice lock/ })).toBeVisible();
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

test("asks first, with the camera off, and a no leads back", async ({ page, bench }) => {
  await bench.open({ profile: "three-wheel" });
  await choose(page);
  await expect(row(page)).toContainText("A recording of a dial is its combination");
  expect(await hasCamera(page)).toBe(false);
  expect(await violations(page)).toEqual([]);
  await row(page).getByRole("button", { name: "No: leave the camera off" }).click();
  await expect(row(page)).toContainText("It follows only a practice lock whose combination may be recorded.");
  expect(await hasCamera(page)).toBe(false);
  await expect(page.getByRole("button", { name: `Connect: ${TITLE}` })).toBeVisible();
});

test("the marks are put on the picture by keys, and the dial is found", async ({ page, bench }) => {
  await bench.open({ profile: "three-wheel" });
  await choose(page);
  await page.getByRole("button", { name: /^Yes, a practice lock/ }).click();
  await expect(row(page)).toContainText("Pictures never leave this device and are not stored.");
  const middle = row(page).getByRole("slider", { name: "Middle of the knob" });
  await expect(middle).toHaveAttribute("aria-valuetext", "50.0 % from the left, 50.0 % from the top");
  expect(await violations(page)).toEqual([]);
  // Nowhere near the rim: it says so, and the marks stay where they are.
  const index = row(page).getByRole("slider", { name: "Tip of the index" });
  await index.focus();
  for (let k = 0; k < 6; k++) await page.keyboard.press("Shift+ArrowDown");
  await row(page).getByRole("button", { name: "Find the dial" }).click();
  await expect(row(page).getByRole("alert")).toContainText(/./, { timeout: 20_000 });
  await moveByKeys(page, middle, PLACES.middle, { x: 0.5, y: 0.5 });
  await moveByKeys(page, index, PLACES.index, { x: 0.5, y: 0.45 });
  await row(page).getByRole("button", { name: "Find the dial" }).click();
  await expect(row(page)).toContainText("The dial is found.", { timeout: 20_000 });
  await expect(row(page).getByRole("progressbar", { name: "Slow turn" })).toBeVisible();
  expect(await violations(page)).toEqual([]);
  if (process.env.SHOTS !== undefined) await page.screenshot({ path: join(process.env.SHOTS, "ordinary-turn.png") });
  // With the panel the camera goes off, and the marks are remembered for it, where they were found right.
  await page.keyboard.press("Escape");
  await choose(page);
  await page.getByRole("button", { name: /^Yes, a practice lock/ }).click();
  const x = (100 * PLACES.index.x).toFixed(0);
  await expect(row(page).getByRole("slider", { name: "Tip of the index" })).toHaveAttribute("aria-valuenow", x);
});

test("two taps, and a drag that corrects one, do the same", async ({ page, bench }) => {
  await bench.open({ profile: "three-wheel" });
  await choose(page);
  await page.getByRole("button", { name: /^Yes, a practice lock/ }).click();
  const picture = row(page).getByTestId("marks");
  await expect(row(page)).toContainText("Tap the middle of the knob.");
  const box = async () => (await picture.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
  // The picture has its size once the first frame is there.
  await expect.poll(async () => (await box()).height).toBeGreaterThan(300);
  await picture.scrollIntoViewIfNeeded();
  const { x, y, width, height } = await box();
  const at = (place: { readonly x: number; readonly y: number }) =>
    [x + place.x * width, y + place.y * height] as const;
  await page.mouse.click(...at(PLACES.middle));
  await expect(row(page)).toContainText("Tap the tip of the index");
  await page.mouse.click(...at({ x: PLACES.index.x + 0.1, y: PLACES.index.y - 0.05 }));
  await expect(row(page)).toContainText("Look at both marks.");
  await page.mouse.move(...at({ x: PLACES.index.x + 0.1, y: PLACES.index.y - 0.05 }));
  await page.mouse.down();
  await page.mouse.move(...at(PLACES.index), { steps: 4 });
  await page.mouse.up();
  if (process.env.SHOTS !== undefined) await page.screenshot({ path: join(process.env.SHOTS, "ordinary-marks.png") });
  await row(page).getByRole("button", { name: "Find the dial" }).click();
  await expect(row(page)).toContainText("The dial is found.", { timeout: 20_000 });
});
