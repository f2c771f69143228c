import { join } from "node:path";
import type { Page } from "@playwright/test";
import { cameraPlaying, filmInto } from "../support/film/fakeCamera";
import { violations } from "./axe";
import { KeyHand } from "./hands";
import { expect, test } from "./page";

/*
 * A film of a printed dial, played by the browser's fake camera, turns the bench's dial. No real camera was tried.
 */

const FILM = join(import.meta.dirname, "../../test-results/films/to-and-fro.y4m");

test.use({ launchOptions: cameraPlaying(FILM), permissions: ["camera"] });

test.beforeAll(() => {
  test.setTimeout(180_000);
  // A turn and 30 graduations left, 60 right, and back to 0, from where it goes round again.
  const legs = [
    { by: 130, speed: 120, restMs: 500 },
    { by: -60, speed: 100, restMs: 5000 },
    { by: -70, speed: 100, restMs: 500 },
  ];
  filmInto(FILM, { restMs: 4000, legs }, 7);
});

const more = (page: Page) => page.getByRole("listitem").filter({ hasText: "Printed dial and camera" });
const device = (page: Page) => page.getByRole("region", { name: "Your device" });

test("a filmed dial turns the bench's dial, and says what it sees", async ({ page, bench }) => {
  test.setTimeout(120_000);
  await bench.open({ profile: "three-wheel" });
  await new KeyHand(bench, 100).turnBy(-(await bench.reading()));
  await bench.expectReading(0, 100);
  await page.getByRole("button", { name: /^More/ }).click();
  await page.getByRole("button", { name: "Connect: Printed dial and camera" }).click();
  await expect(more(page).getByRole("status").first()).toContainText("turns the dial in steps of 0.1 graduations");
  await page.keyboard.press("Escape");
  // A busy machine shows too few frames to count turns by: then the dial says so, and goes on at its number in the next round.
  await expect(() => bench.expectReading(70, 100, 0.2)).toPass({ timeout: 60_000 });
});

test("the setup shows the camera's picture with what is found, and what it measures", async ({ page }) => {
  await page.goto("#/dial");
  await page.getByRole("button", { name: "Choose: Printed dial and camera" }).click();
  await page.getByRole("button", { name: "Connect", exact: true }).click();
  await expect(device(page)).toContainText("Pictures never leave this device and are not stored.");
  await expect(device(page)).toContainText(/Frame rate: \d+ frames a second, each read in \d+ ms\./);
  await expect(page.locator("main video")).toBeVisible();
  await expect(page.locator("main video + svg path").first()).toBeAttached();
  expect(await violations(page)).toEqual([]);
});

test("a camera that has not turned the dial is off once its panel is closed", async ({ page, bench }) => {
  await bench.open({ profile: "three-wheel" });
  await new KeyHand(bench, 100).turnBy(50 - (await bench.reading()));
  await page.getByRole("button", { name: /^More/ }).click();
  await page.getByRole("button", { name: "Connect: Printed dial and camera" }).click();
  await expect(more(page)).toContainText("Turn your dial to 50, where the dial on the screen is. It takes over there.");
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: /^More/ }).click();
  await expect(page.getByRole("button", { name: "Connect: Printed dial and camera" })).toBeVisible();
});
