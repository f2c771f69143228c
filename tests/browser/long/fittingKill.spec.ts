import { test as base, expect } from "@playwright/test";
import { KillableBrowser } from "../killableBrowser";

const test = base.extend<{ readonly browserToKill: KillableBrowser }>({
  browserToKill: async ({ baseURL }, use, info) => {
    const browser = new KillableBrowser(info.outputPath("profile"), baseURL ?? "");
    await use(browser);
    await browser.close();
  },
});

/** A browser writes a page's texts to its disk some seconds after they were stored; a kill in those loses them. */
const WRITTEN_ms = 10_000;

test("a fitting goes on after its browser was killed", async ({ browserToKill }) => {
  const page = await browserToKill.open("#/fitting?seed=3");
  await page.getByRole("button", { name: "Hang it by one screw" }).click();
  await page.getByRole("button", { name: "Put it on over the bushing" }).click();
  await page.getByRole("button", { name: "Silent" }).click();
  await page.waitForTimeout(WRITTEN_ms);
  await browserToKill.kill();

  const again = await browserToKill.open("#/fitting");
  await expect(again.getByRole("group", { name: "Lock body: hangs by one screw" })).toBeVisible();
  await expect(again.getByRole("group", { name: "Ring: on, screws loose" })).toBeVisible();
  await expect(again.getByRole("button", { name: "Silent" })).toHaveAttribute("aria-pressed", "true");
});
