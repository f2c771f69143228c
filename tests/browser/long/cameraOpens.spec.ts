import { join } from "node:path";
import { idealMotion } from "../../../src/dialing/idealMotion";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import { cameraPlaying, filmInto } from "../../support/film/fakeCamera";
import { KeyHand } from "../hands";
import { expect, test } from "../page";

/*
 * A film of a printed dial, played by the browser's fake camera, opens the bench's lock. No real camera was tried.
 */

const FILM = join(import.meta.dirname, "../../../test-results/films/opens.y4m");

// A busy machine may show too few frames to count turns by: then the dial says so, and this attempt is lost.
test.describe.configure({ retries: 2 });
test.use({ launchOptions: cameraPlaying(FILM), permissions: ["camera"] });

test.beforeAll(() => {
  test.setTimeout(600_000);
  const path = idealMotion(shippedProfile("three-wheel"), [38, 71, 26], 0);
  const legs = path.map((stop, k) => ({ by: stop - (path[k - 1] ?? 0), speed: 170, restMs: 600 }));
  filmInto(FILM, { restMs: 5000, legs: [...legs, { by: 0.001, speed: 1, restMs: 8000 }] }, 11);
});

test("a filmed dial opens the lock on the bench", async ({ page, bench }) => {
  test.setTimeout(120_000);
  await bench.open({ profile: "three-wheel", combination: "38-71-26" });
  // To 0 by the left: the first number is dialed that way, and may be passed once more.
  await new KeyHand(bench, 100).turnBy(100 - (await bench.reading()));
  await page.getByRole("button", { name: /^More/ }).click();
  await page.getByRole("button", { name: "Connect: Printed dial and camera" }).click();
  await expect(page.getByText("Status: turns the dial in steps of 0.1 graduations")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(bench.dial).toHaveClass(/dial-is-open/, { timeout: 60_000 });
  await expect(bench.result).toContainText("Open");
});
