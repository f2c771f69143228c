import { BROWSER_SWITCHES, browserPath } from "./browserPath";
import { OrdinarySetupPage } from "./ordinarySetup";
import { expect, test } from "./page";

/*
 * A person who says no as the browser asks for the camera: the browser's own refusal.
 */

const args = [...BROWSER_SWITCHES, "--use-fake-ui-for-media-stream=deny", "--use-fake-device-for-media-stream"];
test.use({ launchOptions: { executablePath: browserPath() ?? "", args } });

test("a refused camera has its sentence, and a way back to what was to be chosen", async ({ page }) => {
  await page.goto("#/dial");
  await page.getByRole("button", { name: "Choose: Printed dial and camera" }).click();
  await page.getByRole("button", { name: "Connect", exact: true }).click();
  const device = page.getByRole("region", { name: "Your device" });
  await expect(device).toContainText(
    "The browser refused access to the camera. Allow it in the browser's settings for this site, then connect again.",
  );
  await expect(device).toContainText("Status: not connected");
  await expect(page.locator("video")).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Connect again" })).toBeVisible();
  await page.getByRole("button", { name: "Choose another source" }).click();
  await expect(page.getByRole("heading", { name: "Choose what you turn" })).toBeFocused();
  await expect(page.getByRole("alert")).toHaveCount(0);
});

test("of an ordinary dial too, after its question", async ({ page }) => {
  const setup = new OrdinarySetupPage(page);
  await setup.choose();
  await setup.agree();
  await expect(page.getByRole("alert")).toContainText("The browser refused access to the camera.");
  await expect(page.locator("video")).toHaveCount(0);
  await page.getByRole("button", { name: "Connect again" }).click();
  await setup.question.waitFor();
});
