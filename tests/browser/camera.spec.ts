import { readFileSync } from "node:fs";
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

const row = (page: Page) => page.getByRole("listitem").filter({ hasText: "Printed dial and camera" });

async function connect(page: Page) {
  await page.getByRole("button", { name: /^More/ }).click();
  await page.getByRole("button", { name: "Connect: Printed dial and camera" }).click();
}

test("a filmed dial turns the bench's dial, and says what it sees", async ({ page, bench }) => {
  test.setTimeout(120_000);
  await bench.open({ profile: "three-wheel" });
  await new KeyHand(bench, 100).turnBy(-(await bench.reading()));
  await bench.expectReading(0, 100);
  await connect(page);
  await expect(row(page)).toContainText("Pictures never leave this device and are not stored.");
  await expect(row(page).getByRole("status").first()).toContainText("turns the dial in steps of 0.1 graduations");
  await expect(row(page)).toContainText(/Frame rate: \d+ frames a second, each read in \d+ ms\./);
  if (process.env.SHOTS !== undefined) await page.screenshot({ path: join(process.env.SHOTS, "camera-setup.png") });
  await page.keyboard.press("Escape");
  // A busy machine shows too few frames to count turns by: then the dial says so, and goes on at its number in the next round.
  await expect(() => bench.expectReading(70, 100, 0.2)).toPass({ timeout: 60_000 });
});

test("both sheets of a printed dial are saved to be printed, by their real size", async ({ page, bench }) => {
  await bench.open({ profile: "small-three-wheel" });
  await page.getByRole("button", { name: /^More/ }).click();
  await row(page).getByText("Print the dial and build it").click();
  const saved = async (name: string | RegExp) => {
    const download = page.waitForEvent("download");
    await row(page).getByRole("button", { name }).click();
    return readFileSync(await (await download).path(), "utf8");
  };
  expect(await saved("Save the base sheet")).toContain('width="210mm" height="297mm"');
  await row(page).getByLabel("Paper").selectOption("Letter");
  const disc = await saved("Save the disc with 60 graduations");
  expect(disc).toContain('width="215.9mm" height="279.4mm"');
  expect(disc).toMatch(/>55</);
  expect(disc).not.toMatch(/>90</);
  expect(await violations(page)).toEqual([]);
});

test("a camera that has not turned the dial is off once its panel is closed", async ({ page, bench }) => {
  await bench.open({ profile: "three-wheel" });
  await new KeyHand(bench, 100).turnBy(50 - (await bench.reading()));
  await connect(page);
  await expect(row(page)).toContainText("Turn your dial to 50, where the dial on the screen is. It takes over there.");
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: /^More/ }).click();
  await expect(page.getByRole("button", { name: "Connect: Printed dial and camera" })).toBeVisible();
});
