import type { Page } from "@playwright/test";
import { LOOKS, look, violations } from "./axe";
import { expect, test } from "./page";

const ADDRESS = "#/handover?view=run&profile=two-wheel&seed=3&hands=off&fit=first";

const does = async (page: Page, ...names: readonly string[]) => {
  for (const name of names) await page.getByRole("button", { name, exact: true }).click();
};

/** Puts the lock together, its ring by eye and its strike by one screw, the key in the first keyway that lines up. */
async function fitBadly(page: Page): Promise<void> {
  await page.getByLabel("Washers, from the cam out").selectOption("flat, flat, spring");
  await does(page, "Hang it by one screw", "Tighten all screws", "Put it on by eye", "Tighten the ring");
  await page.getByLabel("Cut to, mm from the dial's back").fill("88.5");
  await does(page, "Saw off", "File and chamfer the end", "In until it touches");
  const slot = page.getByRole("term").filter({ hasText: "Slot of the spindle" }).locator("+ dd");
  for (let k = 0; k < 40 && (await slot.textContent()) !== "one lines up"; k++) await does(page, "Out 1 graduation");
  await does(page, "Insert the key", "Drive it home", "Screw firmly, 0.6 Nm", "Hang the strike by one screw");
}

test("a handover begins with its fitting: told when not checked, kept over a reload, taken apart again, and told at the end", async ({
  page,
}) => {
  await page.goto(ADDRESS);
  const told = page.getByTestId("run-told");
  await expect(told).toContainText("The parts of the lock are in the tray.");
  await expect(page.getByTestId("run-next")).toContainText("Fit the lock");
  await expect(page.getByRole("region", { name: "Checks" }).getByRole("button")).toHaveCount(0);
  await does(page, "The lock is fitted");
  await expect(told).toContainText("Not possible. Parts are still in the tray.");
  await fitBadly(page);
  await page.reload();
  await expect(page.getByText("Dial and cam are coupled. The cover is off.")).toBeVisible();
  await does(page, "The lock is fitted");
  await expect(told).toContainText("before you had made every check of its fit");
  await expect(page.getByTestId("state-fit")).toHaveText("fitted");
  await expect(page.getByRole("slider", { name: "Dial" })).toBeVisible();

  await does(page, "Prepare", "Measure the height", "Prepare", "Align the ring");
  await does(page, "Fit", "Take the lock apart again");
  await expect(told).toContainText("Ring, zero and every proof so far are void.");
  await expect(page.getByTestId("state-ring")).toHaveText("loose");
  await expect(page.getByRole("button", { name: "Remove the key", exact: true })).toBeEnabled();
  await does(page, "The lock is fitted", "Paper", "Look back");
  const fit = page.getByRole("region", { name: "The fit" });
  await expect(fit).toContainText("The strike hangs by one screw.");
  await expect(fit).toContainText("Checks you did not make on this fit: depth gauge on the cam");
  const file = page.waitForEvent("download");
  await does(page, "Save the handover");
  const path = await (await file).path();
  await page.locator('input[type="file"][accept=".json"]').first().setInputFiles(path);
  await expect(page.getByTestId("run-checked")).toContainText("The strike hangs by one screw.");
});

test("on a phone the gauges stay in view while the parts below are acted on, and checks come after the parts", async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(ADDRESS);
  const cover = page.getByRole("button", { name: "Put the cover on", exact: true });
  await cover.evaluate((button) => button.scrollIntoView({ block: "center" }));
  await expect(cover).toBeInViewport();
  await expect(page.getByRole("term").filter({ hasText: "Slot of the spindle" })).toBeInViewport();
  const checks = await page.getByRole("region", { name: "Checks" }).boundingBox();
  const last = await cover.boundingBox();
  expect(checks?.y).toBeGreaterThan(last?.y ?? Number.POSITIVE_INFINITY);
});

for (const one of LOOKS) {
  test(`axe finds nothing wrong with the fitting of a handover, ${one.name}`, async ({ page }) => {
    await look(page, one);
    await page.goto(ADDRESS);
    await does(page, "Hang it by one screw");
    expect(await violations(page)).toEqual([]);
  });
}
