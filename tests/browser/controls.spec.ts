import { expect, test } from "./page";

/* What the library of controls is trusted with, once for each control: its keys, its focus, and the policy of the page. */

test.describe("a dialog", () => {
  test("keeps the focus, hides the page behind it, and gives the focus back", async ({ bench, page }) => {
    await bench.open();
    const opener = page.getByRole("button", { name: "More", exact: true });
    await opener.press("Enter");
    const dialog = page.getByRole("dialog", { name: "More settings" });
    await expect(dialog.locator(":focus")).toHaveCount(1);
    expect(await page.getByRole("slider", { name: "Dial" }).evaluate((dial) => dial.closest("[inert]"))).not.toBeNull();
    await page.keyboard.press("Shift+Tab");
    await expect(dialog.getByRole("button", { name: "Close" })).toBeFocused();
    await page.keyboard.press("Shift+Tab");
    await expect(dialog.locator(":focus")).toHaveCount(1);
    await page.mouse.click(5, 400);
    await expect(dialog).toBeVisible();
    await page.keyboard.press("Escape");
    await expect(dialog).toHaveCount(0);
    await expect(opener).toBeFocused();
  });

  test("closes by Escape also when what had the focus is gone", async ({ bench, page }) => {
    await bench.open();
    await page.getByRole("button", { name: "More", exact: true }).click();
    const dialog = page.getByRole("dialog");
    await dialog.locator(":focus").evaluate((focused) => focused.remove());
    await page.keyboard.press("Escape");
    await expect(dialog).toHaveCount(0);
  });

  test("writes no style into the page on a phone of any make", async ({ bench, page }) => {
    // The library treats phones of one make on their own.
    await page.addInitScript(() => Object.defineProperty(navigator, "platform", { get: () => "iPhone" }));
    await bench.open();
    await page.getByRole("button", { name: "More", exact: true }).click();
    await expect(page.getByRole("dialog")).toBeVisible();
    expect(await page.locator("style").count()).toBe(0);
  });
});
