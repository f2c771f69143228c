import type { Page } from "@playwright/test";
import { LOOKS, look, violations } from "./axe";
import { expect, test } from "./page";

const press = (page: Page, name: string) => page.getByRole("button", { name, exact: true }).press("Enter");

/** What the gauge on the cam showed last. */
async function gauged(page: Page): Promise<number> {
  const words = (await page.locator(".trouble-last[role=status]").textContent()) ?? "";
  return Number(/: ([+−]?[\d.]+)\.$/.exec(words)?.[1]?.replace("−", "-"));
}

/** Measures a slipped index and names it, by keyboard. */
async function diagnose(page: Page): Promise<void> {
  await page.goto("#/handover?view=trouble&profile=two-wheel&pool=index-slipped&seed=2&help=silent");
  const cams: number[] = [];
  for (const side of ["left", "right", "left", "right"]) {
    await press(page, `Cam after a ${side} turn`);
    cams.push(await gauged(page));
  }
  const size = cams.reduce((sum, value) => sum + value, 0) / cams.length;
  await page.getByRole("radio", { name: "Index slipped" }).press("Space");
  await page.getByLabel("The index is off by").fill(Math.abs(size).toFixed(2));
  await page.getByLabel("Which way").selectOption(size > 0 ? "left" : "right");
  await press(page, "Name it");
  await press(page, "Show the answer");
  await expect(page.getByRole("region", { name: "What it was" })).toContainText("2 of 2 points");
}

async function expectSound(page: Page, moment: string): Promise<void> {
  for (const one of LOOKS) {
    await look(page, one);
    expect(await violations(page), `${moment}, ${one.name}`).toEqual([]);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(overflow, `nothing lies beside the page: ${moment}`).toBeLessThanOrEqual(0);
  }
}

test(
  "a diagnosis by keyboard is in the logbook, is noted, and comes to the class desk in a file",
  { tag: "@long" },
  async ({ page }, info) => {
    await diagnose(page);
    await page.getByRole("link", { name: "Logbook" }).press("Enter");
    await page.getByRole("link", { name: "Jobs", exact: true }).press("Enter");
    const row = page.getByRole("row", { name: /Trouble/ });
    await expect(row).toContainText(/Two-wheel, silent\s*Right\s*index slipped; size off by 0\.\d\d graduations/);
    await row.getByRole("button", { name: /^Look at the job of/ }).press("Enter");
    const job = page.getByRole("region", { name: "Chosen job" });
    await expect(job).toContainText("It was: Index slipped:");
    await expect(job).toContainText("2 of 2 points, 0 tries, 4 measurements.");
    await expect(job.getByRole("link", { name: "The same trouble again" })).toHaveAttribute(
      "href",
      "#/handover?view=trouble&profile=two-wheel&help=silent&seed=2&pool=index-slipped",
    );
    await job.getByLabel(/^Tags/).fill("cold hands");
    await press(page, "Save tags and note");
    await expect(row).toContainText("cold hands");
    await page.getByRole("checkbox", { name: "misses only" }).press("Space");
    await expect(page.getByText(/^No jobs match this filter\./)).toBeVisible();
    await page.getByRole("checkbox", { name: "misses only" }).press("Space");
    await expectSound(page, "jobs");

    await page.getByRole("link", { name: "Progress", exact: true }).press("Enter");
    await expect(page.getByRole("combobox", { name: "Lock and exercise" })).toHaveText("Two-wheel, trouble (1)");
    await expect(page.getByRole("region", { name: "Jobs done right" })).toContainText("You get 1 of 1 right.");
    await expect(page.getByRole("region", { name: "Readiness", exact: true })).toContainText(
      /right jobs in a row would make you ready/,
    );
    await expect(page.getByRole("region", { name: "What next" }).getByRole("link")).toHaveAttribute(
      "href",
      /^#\/handover\?view=trouble&profile=two-wheel/,
    );

    await page.getByRole("link", { name: "Files", exact: true }).press("Enter");
    const [download] = await Promise.all([page.waitForEvent("download"), press(page, "Whole logbook")]);
    await expect(page.getByText("Saved 1 person, 0 attempts and 1 job.")).toBeVisible();
    const file = info.outputPath("trainee.json");
    await download.saveAs(file);

    await page.goto("#/desk");
    await page.locator("input[type=file]").setInputFiles(file);
    await expect(page.getByRole("region", { name: "Logbooks of the class" })).toContainText(
      "0 attempts, 1 job, 0 sittings",
    );
    await page.getByRole("button", { name: /Not ready yet.*More of Trainee, Two-wheel, trouble/ }).press("Enter");
    const details = page.getByRole("dialog", { name: "Trainee" });
    await expect(details).toContainText("Nothing missed in these jobs.");
    await expect(details.getByRole("table", { name: "Latest 1 of 1 jobs" }).getByRole("row").nth(1)).toContainText(
      "index slipped",
    );
    await expectSound(page, "details of a person with a job");
  },
);

test("where the browser keeps nothing, a job waits in the tab with the reason", async ({ page }) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException("denied", "SecurityError");
    };
  });
  await diagnose(page);
  await page.getByRole("link", { name: "Logbook" }).click();
  await page.getByRole("link", { name: "Jobs", exact: true }).click();
  await expect(page.getByRole("row", { name: /Trouble/ })).toContainText("Right");
  await expect(
    page.getByText(/records? waits? in this tab\. This browser does not let the page store anything/),
  ).toBeVisible();
});
