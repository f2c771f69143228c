import { expect, test } from "./page";

/** Faults of layout that were there once: each is held by what a person would see of it. */

test("on a phone the steps of a zeroing are as high as their two lines", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto("#/zeroing?seed=5");
  const step = page.getByRole("list", { name: "Steps of the calibration" }).getByRole("listitem").first();
  await expect(step).toBeVisible();
  const { height, lines } = await step.evaluate((element) => ({
    height: element.getBoundingClientRect().height,
    lines: [...element.children].reduce((sum, child) => sum + child.getBoundingClientRect().height, 0),
  }));
  expect(height - lines).toBeLessThan(20);
});

test("messages of the logbook and the desk can be closed, and the focus stays in their place", async ({ page }) => {
  await page.goto("#/logbook?view=files");
  await page.getByRole("button", { name: "Load the demo" }).click();
  const message = page.getByRole("status").filter({ hasText: "records added" });
  await expect(message).toBeVisible();
  await page.getByRole("button", { name: "Close this message" }).press("Enter");
  await expect(message).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Close this message" })).toHaveCount(0);
  await page.keyboard.press("Tab");
  await expect(page.locator("body")).not.toBeFocused();

  await page.goto("#/desk");
  await page.locator("input[type=file]").setInputFiles({
    name: "notes.json",
    mimeType: "application/json",
    buffer: Buffer.from('{"format":"recipes"}'),
  });
  const refusal = page.getByRole("alert", { name: "Files that were not read" });
  await expect(refusal).toContainText("notes.json was not read.");
  await page.getByRole("button", { name: "Close this message" }).click();
  await expect(refusal).toHaveCount(0);
});

test("an empty list of the logbook says what to do, and offers nothing that is not there", async ({ page }) => {
  await page.goto("#/logbook?view=files");
  await page.getByRole("button", { name: "Load the demo" }).click();
  await expect(page.getByRole("button", { name: "Remove the demo" })).toBeVisible();
  await page.goto("#/logbook?view=sittings");
  await expect(page.getByText("No sittings yet. Choose a sheet")).toBeVisible();
  await expect(page.getByRole("button", { name: "Earlier", exact: true })).toHaveCount(0);
  await expect(page.getByText("Choose a sitting to look at it.")).toBeHidden();
});

test("on paper ink is dark, whatever the screen's theme is", async ({ page }) => {
  await page.emulateMedia({ media: "print", colorScheme: "dark" });
  for (const path of ["start", "words", "handover", "desk", "logbook"]) {
    await page.goto(`#/${path}`);
    await expect(page.getByRole("main").getByText(/\w/).first()).toBeAttached();
    for (const theme of ["system", "dark"]) {
      await page.evaluate((chosen) => {
        if (chosen === "system") delete document.documentElement.dataset.theme;
        else document.documentElement.dataset.theme = chosen;
      }, theme);
      const ink = await page.evaluate(() => getComputedStyle(document.body).color);
      const [red = 255, green = 255, blue = 255] = (ink.match(/[\d.]+/g) ?? []).map(Number);
      expect(Math.max(red, green, blue), `${path}, ${theme}: ${ink}`).toBeLessThan(90);
    }
  }
});
