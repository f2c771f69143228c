import { doorWith, Handover } from "./handover";
import { expect, test } from "./page";

test("a handover that the browser does not store says so on its own page, at once, and goes on", async ({ page }) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException("denied", "SecurityError");
    };
  });
  const door = new Handover(page);
  await door.open({ ...doorWith({}), isHandsOff: true });
  await expect(
    page.getByRole("alert").filter({
      hasText:
        /^This handover is not stored\. This browser does not let the page store anything.* Keep this tab open until you have saved or printed the record\.$/,
    }),
  ).toBeVisible();
  await door.does("Measure the height", "Look back");
  await expect(page.getByRole("list", { name: "Step by step" }).getByRole("listitem")).toHaveCount(1);
});
