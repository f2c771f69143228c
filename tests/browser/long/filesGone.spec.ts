import { expect, type Page, test } from "@playwright/test";
import { Bench } from "../bench";
import { dialLast } from "../sittingByKeys";
import { storedRows } from "../storedRows";

/* A new version was started elsewhere: the files of the page that is open are not on the server any more. */

const filesGo = (page: Page, which = "**/assets/**") => page.route(which, (route) => route.abort());
const opened = (page: Page) => page.getByRole("row", { name: /Opened/ });

test("an attempt dialed after the files are gone is stored; a screen that was not fetched says so and reloads", async ({
  page,
}) => {
  await page.goto("#/bench?seed=5");
  await page.waitForLoadState("networkidle");
  await filesGo(page);
  await dialLast(page);
  await expect(new Bench(page).state).toHaveText(/^Opened/);
  await expect.poll(() => storedRows(page, "attempts")).toMatchObject([{ opened: true }]);
  expect(await storedRows(page, "people")).toHaveLength(1);
  await expect(page.getByRole("complementary", { name: "Saving" })).toHaveCount(0);

  await page.getByRole("link", { name: "Logbook" }).click();
  await expect(page.getByRole("alert")).toContainText("A file of this page could not be loaded");
  await page.unroute("**/assets/**");
  await page.getByRole("button", { name: "Reload" }).click();
  await expect(opened(page)).toHaveCount(1);
});

test("where even what saves records could not be fetched, the bench says so at once, and a reload takes them along", async ({
  page,
}) => {
  let loads = 0;
  page.on("request", (request) => {
    if (request.isNavigationRequest()) loads++;
  });
  // The next page gets the file; this one tries again by itself and must not.
  await page.route("**/assets/keep-*.js", (route) => (loads === 1 ? route.abort() : route.continue()));
  await page.goto("#/bench?seed=5");
  const saving = page.getByRole("complementary", { name: "Saving" });
  await expect(saving).toContainText("Not saved");
  await dialLast(page);
  await expect(new Bench(page).state).toHaveText(/^Opened/);
  await expect(saving).toContainText("A file that saves records could not be loaded");
  await saving.getByRole("button", { name: "Reload the page" }).click();
  await expect.poll(() => storedRows(page, "attempts")).toMatchObject([{ opened: true }]);
  await expect(saving).toHaveCount(0);
  await page.goto("#/logbook");
  await expect(opened(page)).toHaveCount(1);
});

for (const { what, file } of [
  { what: "what draws dialogs", file: "**/assets/ModalDialog-*.js" },
  { what: "the dialogs of the bench", file: "**/assets/BenchSheets-*.js" },
]) {
  test(`where ${what} cannot be fetched, that is said, the attempt under way goes on, and the next time it is fetched again`, async ({
    page,
  }) => {
    await filesGo(page, file);
    await page.goto("#/bench?seed=5");
    await dialLast(page, [], 2);
    const stands = await new Bench(page).reading();
    const more = page.getByRole("button", { name: "More", exact: true });
    await more.press("Enter");
    const gone = page.getByRole("dialog", { name: "Not loaded" });
    await expect(gone.getByRole("alert")).toContainText("A file of this page could not be loaded");
    await page.keyboard.press("Escape");
    await expect(gone).toHaveCount(0);
    await expect(more).toBeFocused();
    await more.press("Enter");
    await gone.getByRole("button", { name: "Close" }).click();
    await expect(gone).toHaveCount(0);
    expect(await new Bench(page).reading()).toBe(stands);
    await page.unroute(file);
    // The focus that came back may have asked ahead, before the file was there again: then the next time is the one after.
    await expect(async () => {
      if (await gone.isVisible()) await gone.getByRole("button", { name: "Close" }).click();
      await more.press("Enter");
      await expect(page.getByRole("dialog", { name: "More settings" })).toBeVisible({ timeout: 2000 });
    }).toPass();
  });
}

test("where what stands beside the dial cannot be fetched, that is said there, and the dial turns", async ({
  page,
}) => {
  await filesGo(page, "**/assets/BenchPanels-*.js");
  await page.goto("#/bench?seed=5");
  // Beside it stands the place for faults, which is empty.
  const told = page.getByRole("main").getByRole("alert").filter({ hasText: "A file of this page could not be loaded" });
  await expect(told).toBeVisible();
  await dialLast(page);
  await expect(new Bench(page).state).toHaveText(/^Opened/);
});

test("where what connects a device cannot be fetched, the settings beside it are there and the dial turns", async ({
  page,
}) => {
  await filesGo(page, "**/assets/DevicePanel-*.js");
  await page.goto("#/bench?seed=5");
  await page.getByRole("button", { name: "More", exact: true }).press("Enter");
  const settings = page.getByRole("dialog", { name: "More settings" });
  await expect(settings.getByRole("alert")).toContainText("A file of this page could not be loaded");
  await expect(settings.getByRole("radio", { name: /^Heavy/ })).toBeVisible();
  await page.keyboard.press("Escape");
  await dialLast(page);
  await expect(new Bench(page).state).toHaveText(/^Opened/);
});

test("where a word's meaning cannot be fetched, its dialog says so", async ({ page }) => {
  await filesGo(page, "**/assets/WordMeaning-*.js");
  await page.goto("#/start");
  await page.getByRole("link", { name: "arrival", exact: true }).click();
  await expect(page.getByRole("dialog", { name: "What it means" }).getByRole("alert")).toContainText(
    "could not be loaded",
  );
});

for (const address of ["#/start", "#/bench", "#/logbook"]) {
  test(`where the app itself cannot be fetched, the picture of ${address} says that it is none that works`, async ({
    page,
  }) => {
    const told = page.getByRole("alert").filter({ hasText: "A file of this page could not be loaded" });
    await page.goto("#/words");
    await expect(told).toHaveCount(0);
    await page.route("**/assets/index-*.js", (route) => route.fulfill({ status: 404, body: "" }));
    await page.goto("about:blank");
    await page.goto(address);
    await expect(told).toBeVisible();
  });
}
