import { expect, type Page } from "@playwright/test";
import axe from "axe-core";

declare global {
  interface Window {
    /** Once its source has run in the page. */
    readonly axe: typeof axe;
  }
}

/**
 * The looks that axe judges each moment in: every color scheme and every width once. Contrast hangs on the scheme and
 * layout on the width, so the other two pairs would find the same again.
 */
export const LOOKS = [
  { name: "light, on a desk", colorScheme: "light", width: 1280, height: 800 },
  { name: "dark, on a phone", colorScheme: "dark", width: 390, height: 844 },
] as const;

/** A scheme of colors in a window. */
interface Look {
  readonly colorScheme: "light" | "dark";
  readonly width: number;
  readonly height: number;
}

/** Puts a page into a look. */
export async function look(page: Page, { colorScheme, width, height }: Look): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.emulateMedia({ colorScheme });
}

/** What the rules of axe-core find, best practices included; no rule is switched off. The app has no frames. */
export async function violations(page: Page): Promise<string[]> {
  // Colors reach their new values with the second frame.
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe.source);
  const found = await page.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
  return found.violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${help} at ${target.join(" ")}: ${failureSummary}`),
  );
}

/** In every look axe finds nothing wrong with a page, and nothing lies beside it. @param what - is shown */
export async function expectGoodInEveryLook(page: Page, what: string): Promise<void> {
  for (const one of LOOKS) {
    await look(page, one);
    expect(await violations(page), `${what}, ${one.name}`).toEqual([]);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(overflow, `${what}, ${one.name}: nothing lies beside the page`).toBeLessThanOrEqual(0);
  }
}
