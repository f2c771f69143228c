import type { Page } from "@playwright/test";
import { violations } from "./axe";
import { BROWSER_SWITCHES, browserPath } from "./browserPath";
import { ORDINARY_TITLE, OrdinarySetupPage } from "./ordinarySetup";
import { expect, test } from "./page";

/*
 * Which camera is used, where there are two. They are the browser's fake ones, with pictures of no dial: no real camera was
 * tried.
 */

const args = [
  ...BROWSER_SWITCHES,
  "--use-fake-ui-for-media-stream",
  "--use-fake-device-for-media-stream=device-count=2",
];
test.use({ launchOptions: { executablePath: browserPath() ?? "", args } });

const camera = (page: Page) => page.getByRole("combobox", { name: /^Camera/ });
const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).click();

/** Which camera the page looks through, by its place in the list; -1 for none of them. */
const inUse = (page: Page) =>
  page.evaluate(async () => {
    const here = (await navigator.mediaDevices.enumerateDevices()).filter(({ kind }) => kind === "videoinput");
    const stream = document.querySelector<HTMLVideoElement>("main video")?.srcObject;
    const id = stream instanceof MediaStream ? stream.getVideoTracks()[0]?.getSettings().deviceId : undefined;
    return here.findIndex(({ deviceId }) => deviceId === id);
  });

/** Both cameras by name, in the choice of the page. */
const expectBoth = (page: Page) =>
  expect(camera(page).getByRole("option")).toHaveText([/fake_device_0/, /fake_device_1/]);

test("before the browser names its cameras, the side is chosen, which it is asked for", async ({ page }) => {
  await page.addInitScript(() => {
    const { mediaDevices } = navigator;
    const open = mediaDevices.getUserMedia.bind(mediaDevices);
    // As a browser does until it has let the page use a camera once.
    mediaDevices.enumerateDevices = async () => [];
    mediaDevices.getUserMedia = (asked) => {
      document.documentElement.dataset.asked = JSON.stringify(asked?.video);
      return open(asked);
    };
  });
  await page.goto("#/dial");
  await press(page, "Choose: Printed dial and camera");
  await expect(page.getByText("The browser lists your cameras once it has let this page use one.")).toBeVisible();
  expect(await violations(page)).toEqual([]);
  await camera(page).selectOption("The one that looks at you");
  await press(page, "Connect");
  await expect(page.locator("main video")).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.dataset.asked)).toContain('"facingMode":"user"');
});

test.describe("with cameras that the browser names", () => {
  test.use({ permissions: ["camera"] });

  test("the camera is chosen before it is turned on, and remembered", async ({ page }) => {
    await page.goto("#/dial");
    await press(page, "Choose: Printed dial and camera");
    await expectBoth(page);
    await camera(page).selectOption({ index: 1 });
    expect(await violations(page)).toEqual([]);
    await press(page, "Connect");
    await expect(page.locator("main video")).toBeVisible();
    expect(await inUse(page)).toBe(1);
    await press(page, "Choose another source");
    await press(page, `Choose: ${ORDINARY_TITLE}`);
    await expectBoth(page);
    await expect(camera(page).getByRole("option", { name: /fake_device_1/ })).toHaveJSProperty("selected", true);
  });

  test("of an ordinary dial another camera is turned on without the question once more", async ({ page }) => {
    const setup = new OrdinarySetupPage(page);
    await setup.choose();
    await setup.agree();
    await setup.picture.waitFor();
    expect(await inUse(page)).toBe(0);
    await camera(page).selectOption({ index: 1 });
    await expect.poll(() => inUse(page)).toBe(1);
    await expect(setup.question).toHaveCount(0);
    await expect(setup.picture).toBeVisible();
  });

  test("where the first one is in use elsewhere, another can be chosen", async ({ page }) => {
    await page.addInitScript(() => {
      const { mediaDevices } = navigator;
      const open = mediaDevices.getUserMedia.bind(mediaDevices);
      mediaDevices.getUserMedia = async (asked) => {
        const stream = await open(asked);
        const label = stream.getVideoTracks()[0]?.label ?? "";
        if (!label.includes("fake_device_0")) return stream;
        for (const track of stream.getTracks()) track.stop();
        throw new DOMException("in use", "NotReadableError");
      };
    });
    const setup = new OrdinarySetupPage(page);
    await setup.choose();
    await setup.agree();
    await expect(page.getByRole("alert")).toContainText("Another program or page uses the camera.");
    await camera(page).selectOption({ index: 1 });
    await press(page, "Connect again");
    await setup.agree();
    await setup.picture.waitFor();
    expect(await inUse(page)).toBe(1);
  });
});
