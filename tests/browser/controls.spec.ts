import type { Locator } from "@playwright/test";
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

  test("closes by Escape also when what had the focus cannot have it any more", async ({ bench, page }) => {
    await bench.open();
    await page.getByRole("button", { name: "More", exact: true }).click();
    const dialog = page.getByRole("dialog");
    await dialog.locator(":focus").evaluate((focused) => focused.setAttribute("disabled", ""));
    await expect(dialog.locator(":focus")).toHaveCount(0);
    await page.keyboard.press("Escape");
    await expect(dialog).toHaveCount(0);
  });

  test("writes no style into the page on a phone of any make", async ({ bench, page }) => {
    // The library treats phones of one make on their own.
    await page.addInitScript(() =>
      Object.defineProperties(navigator, { userAgentData: { value: undefined }, platform: { value: "iPhone" } }),
    );
    await bench.open();
    await page.getByRole("button", { name: "More", exact: true }).click();
    await expect(page.getByRole("dialog")).toBeVisible();
    expect(await page.locator("style").count()).toBe(0);
  });
});

test("tabs are one stop of Tab; arrows pass over a closed one, Enter chooses, and the panel has the tab's name", async ({
  page,
}) => {
  await page.goto("#/zeroing?seed=5");
  const tab = (name: string) => page.getByRole("tab", { name });
  await expect(page.getByRole("tablist", { name: "Exercises" })).toBeVisible();
  await tab("Set zero").focus();
  await page.keyboard.press("ArrowRight");
  await expect(tab("Find the play")).toBeFocused();
  await expect(page.getByRole("tabpanel", { name: "Set zero" })).toBeVisible();
  await page.keyboard.press("ArrowRight");
  await expect(tab("Set zero")).toBeFocused();
  await page.keyboard.press("End");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("tabpanel", { name: "Find the play" })).toBeVisible();
  await expect(tab("Find the play")).toHaveAttribute("aria-selected", "true");
  await page.keyboard.press("Tab");
  await expect(tab("Set zero")).not.toBeFocused();
  await expect(page.getByRole("tabpanel").locator(":focus")).toHaveCount(1);
});

for (const { locale, typed, shown } of [
  { locale: "en-US", typed: "4,5", shown: "4.5" },
  { locale: "de-DE", typed: "4.5", shown: "4,5" },
  { locale: "fa-IR", typed: "۴٫۵", shown: "۴٫۵" },
]) {
  test.describe(`a number field in ${locale}`, () => {
    test.use({ locale });

    test("takes a comma or a point and its own digits, steps by arrow key, and refuses letters", async ({ page }) => {
      await page.goto("#/zeroing?seed=5");
      await page.getByRole("tab", { name: "Find the play" }).click();
      const field = page.getByRole("textbox", { name: "The play is" });
      await field.pressSequentially(`x${typed}y`);
      await expect(field).toHaveValue(shown);
      await field.press("Tab");
      await expect(field).toHaveValue(shown);
      await field.press("ArrowUp");
      const stepped = await field.inputValue();
      await field.press("ArrowDown");
      await expect(field).not.toHaveValue(stepped);
      expect(stepped).toBe(new Intl.NumberFormat(locale).format(5));
    });
  });
}

test("where the system gives the colors, the page, the help and the tab that are chosen are told apart", async ({
  page,
}) => {
  await page.emulateMedia({ forcedColors: "active" });
  const shade = (one: Locator) => one.evaluate((element) => getComputedStyle(element).backgroundColor);
  const apart = async (chosen: Locator, other: Locator) => {
    await expect(chosen).toBeVisible();
    expect(await shade(chosen)).not.toBe(await shade(other));
  };
  const link = (name: string) => page.getByRole("link", { name, exact: true });
  await page.goto("#/bench?seed=5");
  await apart(
    page.getByRole("button", { name: "Full", exact: true }),
    page.getByRole("button", { name: "Counts", exact: true }),
  );
  await apart(link("Bench"), link("Start"));
  await page.goto("#/logbook?view=jobs");
  await apart(link("Jobs"), link("Progress"));
});
