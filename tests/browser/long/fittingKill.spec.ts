import { test as base, expect, type Page } from "@playwright/test";
import { doorWith, Handover } from "../handover";
import { KillableBrowser } from "../killableBrowser";

/* The browser is killed outright a second after an act; what was shown of the act is there when it is opened again. */

const test = base.extend<{ readonly browserToKill: KillableBrowser }>({
  browserToKill: async ({ baseURL }, use, info) => {
    const browser = new KillableBrowser(info.outputPath("profile"), baseURL ?? "");
    await use(browser);
    await browser.close();
  },
});

const SHOWN_FOR_ms = 1000;

/** Runs in the page: all its texts. */
const allTexts = () => Object.entries({ ...localStorage });

/** Runs in the page: its texts as they were, as a killed browser has them that had not written the last ones yet. */
const putTexts = (texts: [string, string][]) => {
  localStorage.clear();
  for (const [key, text] of texts) localStorage.setItem(key, text);
};

/** Kills the browser a second from now, and opens an address on what is left; the page's texts are as they were then. */
async function killedAndOpened(browser: KillableBrowser, page: Page, stale: [string, string][], address: string) {
  await page.waitForTimeout(SHOWN_FOR_ms);
  await browser.kill();
  const again = await browser.open("#/words");
  await again.evaluate(putTexts, stale);
  await again.goto(address);
  await again.reload();
  return again;
}

test("a fitting has its last act a second after it", async ({ browserToKill }) => {
  const page = await browserToKill.open("#/fitting?seed=3");
  await page.getByRole("button", { name: "Hang it by one screw" }).click();
  await page.getByRole("button", { name: "Silent" }).click();
  const stale = await page.evaluate(allTexts);
  await page.getByRole("button", { name: "Put it on over the bushing" }).click();
  await expect(page.getByRole("group", { name: "Ring: on, screws loose" })).toBeVisible();

  const again = await killedAndOpened(browserToKill, page, stale, "#/fitting");
  await expect(again.getByRole("group", { name: "Lock body: hangs by one screw" })).toBeVisible();
  await expect(again.getByRole("group", { name: "Ring: on, screws loose" })).toBeVisible();
  await expect(again.getByRole("button", { name: "Silent" })).toHaveAttribute("aria-pressed", "true");
});

test("a fit that is judged has its last check a second after it", async ({ browserToKill }) => {
  const checksOn = (page: Page) => page.getByRole("region", { name: "Checks" });
  const page = await browserToKill.open("#/fitting?view=find&seed=3");
  const made = checksOn(page).getByText(", made");
  await checksOn(page).getByRole("button", { name: "Turn the wheels" }).press("Enter");
  await expect(made).toHaveCount(1);
  const stale = await page.evaluate(allTexts);
  await checksOn(page).getByRole("button", { name: "Try every screw" }).press("Enter");
  await expect(made).toHaveCount(2);
  const seen = (await checksOn(page).getByRole("status").textContent()) ?? "";

  const again = await killedAndOpened(browserToKill, page, stale, "#/fitting?view=find");
  await expect(checksOn(again).getByText(", made")).toHaveCount(2);
  await expect(checksOn(again).getByRole("status")).toHaveText(seen);
});

test("a service visit has its last act a second after it", async ({ browserToKill }) => {
  const page = await browserToKill.open("#/fitting?view=service&profile=three-wheel&seed=12");
  const status = page.getByRole("status").filter({ hasText: "Hold the door open: done." });
  await page.getByRole("button", { name: "Have the door opened" }).press("Enter");
  const stale = await page.evaluate(allTexts);
  await page.getByRole("button", { name: "Hold the door open" }).press("Enter");
  await expect(status).toBeVisible();

  const again = await killedAndOpened(browserToKill, page, stale, "#/fitting?view=service");
  await expect(again.getByText("You are back in your visit, where you left it.").first()).toBeVisible();
  await expect(again.getByText("Hold the door open: done.").first()).toBeAttached();
});

test("a handover that begins in the tray has its last act a second after it", async ({ browserToKill }) => {
  const { profile, seed } = doorWith({});
  const address = `#/handover?view=run&profile=${profile.id}&seed=${seed}&fit=first`;
  const page = await browserToKill.open(address);
  await new Handover(page).told.waitFor();
  const stale = await page.evaluate(allTexts);
  await page.getByRole("button", { name: "Hang it by one screw" }).click();
  await expect(page.getByRole("group", { name: "Lock body: hangs by one screw" })).toBeVisible();

  const again = await killedAndOpened(browserToKill, page, stale, address);
  await expect(again.getByRole("group", { name: "Lock body: hangs by one screw" })).toBeVisible();
});
