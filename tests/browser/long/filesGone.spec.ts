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
  const keeping = "**/assets/keep-*.js";
  await filesGo(page, keeping);
  await page.goto("#/bench?seed=5");
  const saving = page.getByRole("complementary", { name: "Saving" });
  await expect(saving).toContainText("Not saved");
  await dialLast(page);
  await expect(new Bench(page).state).toHaveText(/^Opened/);
  await expect(saving).toContainText("A file that saves records could not be loaded");
  await page.unroute(keeping);
  await saving.getByRole("button", { name: "Reload the page" }).click();
  await expect.poll(() => storedRows(page, "attempts")).toMatchObject([{ opened: true }]);
  await expect(saving).toHaveCount(0);
  await page.goto("#/logbook");
  await expect(opened(page)).toHaveCount(1);
});
