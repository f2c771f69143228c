import { join } from "node:path";
import type { Page } from "@playwright/test";
import { cameraPlaying, filmInto } from "../support/film/fakeCamera";
import { expect, test } from "./page";

/*
 * The setup of a printed dial before the browser's fake camera, and what it says when the camera goes. No real camera was tried.
 */

const FILM = join(import.meta.dirname, "../../test-results/films/three-checks.y4m");

test.use({ launchOptions: cameraPlaying(FILM), permissions: ["camera"] });

test.beforeAll(() => {
  test.setTimeout(180_000);
  // From 0 as the three checks ask for: 25 by the left, 75 by the right, 0 by the left, from where it goes round again.
  const legs = [
    { by: 25, speed: 50, restMs: 3000 },
    { by: -50, speed: 50, restMs: 3000 },
    { by: 25, speed: 50, restMs: 500 },
  ];
  filmInto(FILM, { restMs: 3500, legs }, 17);
});

const device = (page: Page) => page.getByRole("region", { name: "Your device" });
const task = (page: Page) => page.locator("[aria-labelledby=setup-task]");
const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();

async function connect(page: Page) {
  await page.goto("#/dial");
  await press(page, "Choose: Printed dial and camera");
  await press(page, "Connect");
  await expect(page.locator("main video")).toBeVisible();
}

/** Ends the camera's picture, as a pulled plug does. */
const unplug = (page: Page) =>
  page.locator("main video").evaluate((video: HTMLVideoElement) => {
    const [track] = (video.srcObject as MediaStream).getTracks();
    track?.stop();
    track?.dispatchEvent(new Event("ended"));
  });

/** Tells the page that it is in the background, or in sight again. */
const show = (page: Page, state: DocumentVisibilityState) =>
  page.evaluate((now) => {
    Object.defineProperty(document, "visibilityState", { value: now, configurable: true });
    document.dispatchEvent(new Event("visibilitychange"));
  }, state);

test("a filmed dial makes the three checks by its own stops", async ({ page }) => {
  test.setTimeout(120_000);
  await connect(page);
  await press(page, "Go on to zero");
  await expect(task(page)).toContainText("The numbers went up.", { timeout: 40_000 });
  await press(page, "Go on to the checks");
  await expect(task(page)).toContainText("All three stops agree. Your dial is ready.", { timeout: 60_000 });
  await press(page, "Finish the setup");
  await expect(task(page)).toContainText(/Noise at rest(under )?0\.\d\d graduations/);
  await expect(task(page)).toContainText(/Pictures\d+ a second/);
});

test("a camera that was refused once connects when it is allowed", async ({ page }) => {
  await page.addInitScript(() => {
    const { mediaDevices } = navigator;
    mediaDevices.getUserMedia = async () => {
      // From the next time on it is the browser's own.
      Reflect.deleteProperty(mediaDevices, "getUserMedia");
      throw new DOMException("Permission denied", "NotAllowedError");
    };
  });
  await page.goto("#/dial");
  await press(page, "Choose: Printed dial and camera");
  await press(page, "Connect");
  await expect(device(page)).toContainText("The browser refused access to the camera.");
  await press(page, "Connect again");
  await expect(page.locator("main video")).toBeVisible();
  await expect(device(page)).not.toContainText("refused");
});

test("a camera that is unplugged is missed by a sentence, and connects by itself once it is back", async ({ page }) => {
  await connect(page);
  await press(page, "Go on to zero");
  await unplug(page);
  await expect(device(page)).toContainText("The camera was unplugged. Plug it in again.");
  await expect(device(page).getByRole("button", { name: "Connect again" })).toBeVisible();
  await expect(page.locator("video")).toHaveCount(0);
  await page.evaluate(() => navigator.mediaDevices.dispatchEvent(new Event("devicechange")));
  await expect(page.locator("main video")).toBeVisible();
  await expect(device(page)).toContainText("connected again");
});

test("a page in the background has its camera off, and on again once it is in sight", async ({ page }) => {
  await connect(page);
  await press(page, "Go on to zero");
  const track = await page
    .locator("main video")
    .evaluateHandle((video: HTMLVideoElement) => (video.srcObject as MediaStream).getTracks()[0]);
  await show(page, "hidden");
  await expect(device(page)).toContainText("This page was in the background, so its camera was turned off.");
  expect(await track.evaluate((one) => one?.readyState)).toBe("ended");
  await show(page, "visible");
  await expect(page.locator("main video")).toBeVisible();
  await expect(device(page)).toContainText("connected again");
});

test("a second page that wants the same camera is told who has it, and gets it once it is let go", async ({
  page,
  context,
}) => {
  await connect(page);
  const other = await context.newPage();
  await other.goto("#/dial");
  await press(other, "Choose: Printed dial and camera");
  await press(other, "Connect");
  await expect(device(other)).toContainText(
    "Another page of Gatefall holds the dial. Disconnect it there or close that page, then connect again.",
  );
  await expect(other.locator("video")).toHaveCount(0);
  await expect(page.locator("main video")).toBeVisible();
  await press(page, "Choose another source");
  await press(other, "Connect again");
  await expect(other.locator("main video")).toBeVisible();
});

test("where a browser does not hand out frames, they are drawn and read", async ({ page }) => {
  await page.addInitScript(() => Reflect.deleteProperty(window, "VideoFrame"));
  await connect(page);
  expect(await page.evaluate(() => "VideoFrame" in window)).toBe(false);
  await expect(device(page)).toContainText(/Your dial shows: \d/);
  await expect(device(page)).toContainText(/Frame rate: \d+ frames a second/);
});
