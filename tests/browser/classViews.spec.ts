import type { Page } from "@playwright/test";
import { openClassroom } from "./classroomPage";
import { expect, test } from "./page";

/** How far a link of the views of a class lies outside the row that it is in, pixels. */
const outside = (page: Page, name: string): Promise<number> =>
  page
    .getByRole("navigation", { name: "Views of the class" })
    .getByRole("link", { name, exact: true })
    .evaluate((link) => {
      const row = link.parentElement?.getBoundingClientRect();
      const own = link.getBoundingClientRect();
      if (row === undefined) throw new Error("the link is in no row");
      return Math.max(0, row.left - own.left, own.right - row.right);
    });

test("on a phone the view that is open is in sight, however it was opened", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await openClassroom(page, "#/instructor/class?id=c&view=benches", { "/api/classes/c/devices": { devices: [] } });
  const views = page.getByRole("navigation", { name: "Views of the class" });
  await expect(views.getByRole("link", { name: "Benches" })).toHaveAttribute("aria-current", "page");
  await expect.poll(() => outside(page, "Benches")).toBeLessThanOrEqual(1);
  await page.evaluate(() => location.assign("#/instructor/class?id=c&view=join"));
  await expect.poll(() => outside(page, "Join")).toBeLessThanOrEqual(1);
  await page.evaluate(() => location.assign("#/instructor/class?id=c&view=desk"));
  await expect.poll(() => outside(page, "Class desk")).toBeLessThanOrEqual(1);
  await views.getByRole("link", { name: "Join" }).focus();
  for (let k = 0; k < 6; k++) await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(views.getByRole("link", { name: "Benches" })).toHaveAttribute("aria-current", "page");
  await expect.poll(() => outside(page, "Benches")).toBeLessThanOrEqual(1);
});
