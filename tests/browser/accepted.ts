import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { FullConfig, Page } from "@playwright/test";
import { look } from "./axe";
import { expect, test } from "./page";

/** Phones first: what was drawn while the page was scrolled keeps half a pixel of it until the window has another size. */
const LOOKS = [
  { name: "light-phone", colorScheme: "light", width: 390, height: 844 },
  { name: "dark-phone", colorScheme: "dark", width: 390, height: 844 },
  { name: "dark-desk", colorScheme: "dark", width: 1280, height: 800 },
  { name: "light-desk", colorScheme: "light", width: 1280, height: 800 },
] as const;

/** When it is in every picture. */
export const NOW = new Date("2026-03-02T09:00:00Z");
/** How much of a picture may differ: less than a button. */
const COMPARED = { maxDiffPixelRatio: 0.002, maskColor: "#777777" };
const FOLDER = join(import.meta.dirname, "pictures");
const MADE_BY = join(FOLDER, "made-by.txt");

/** Letters are drawn otherwise by another browser or system: there the test is skipped, and a line says so. */
export function skipWhereDrawnOtherwise(page: Page, config: FullConfig): void {
  const here = `${process.platform} ${page.context().browser()?.version() ?? "unknown"}`;
  if (config.updateSnapshots === "all") {
    mkdirSync(FOLDER, { recursive: true });
    writeFileSync(MADE_BY, `${here}\n`);
  }
  const there = existsSync(MADE_BY) ? readFileSync(MADE_BY, "utf8").trim() : "nothing yet";
  test.skip(here !== there, `the pictures were made by ${there}, and this is ${here}`);
}

interface Accepted {
  /** What the picture begins at, where that is not the top of the page. */
  readonly beginsAt?: string | undefined;
  /** What the machine's speed writes into it. */
  readonly masked: string;
}

/** The page looks as it was accepted last, light and dark, on a desk and on a phone. */
export async function expectAccepted(page: Page, name: string, { beginsAt = "body", masked }: Accepted): Promise<void> {
  await page.getByRole("main").waitFor();
  // What a screen fetches later is there.
  await page.waitForLoadState("networkidle");
  await page.evaluate(() => document.fonts.ready);
  for (const one of LOOKS) {
    await look(page, one);
    const first = page.locator(beginsAt);
    await first.evaluate((part) => scrollTo(0, Math.floor(part.getBoundingClientRect().top + scrollY)));
    const times = page.locator(masked);
    await expect.soft(page).toHaveScreenshot(`${name}-${one.name}.png`, { ...COMPARED, mask: [times] });
  }
}
