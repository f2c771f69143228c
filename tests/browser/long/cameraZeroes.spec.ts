import { join } from "node:path";
import { cameraPlaying, filmInto } from "../../support/film/fakeCamera";
import { expect, test } from "../page";
import { Zeroing } from "../zeroing";

/*
 * A film of a printed dial, played by the browser's fake camera, sets the zero of a lock: its rests record the stops. No real
 * camera was tried.
 */

const FILM = join(import.meta.dirname, "../../../test-results/films/zeroes.y4m");

// A busy machine may show too few frames to count turns by: then the dial says so, and the film goes round once more.
test.describe.configure({ retries: 2 });
test.use({ launchOptions: cameraPlaying(FILM), permissions: ["camera"] });

test.beforeAll(() => {
  test.setTimeout(600_000);
  // Onto 0 by whole turns: two to the right, in which it takes over, then one at a time; the same to the left.
  const legs = [-200, -100, -100, 200, 100, 100].map((by) => ({ by, speed: 150, restMs: 2500 }));
  filmInto(FILM, { restMs: 1500, legs }, 13);
});

test("a filmed dial sets a zero from both sides, to its verdict", async ({ page, bench }) => {
  test.setTimeout(240_000);
  await bench.open({ profile: "three-wheel" });
  await page.getByRole("button", { name: /^More/ }).click();
  await page.getByRole("button", { name: "Connect: Printed dial and camera" }).click();
  await expect(page.getByText("Status: turns the dial in steps of 0.1 graduations")).toBeVisible({ timeout: 60_000 });
  await page.keyboard.press("Escape");
  await page.goto("#/zeroing?seed=5");
  const zeroing = new Zeroing(page);
  await page.getByRole("button", { name: "Clamp the ring" }).click();
  await page.getByLabel("What records a stop").selectOption("rest");
  await expect(zeroing.steps.nth(1)).toContainText("3 of 3 stops", { timeout: 90_000 });
  await expect(zeroing.steps.nth(2)).toContainText("3 of 3 stops", { timeout: 90_000 });
  await expect(zeroing.headline).not.toBeEmpty();
});
