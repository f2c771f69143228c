import { readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Browser } from "@playwright/test";

declare global {
  interface Window {
    /** When the screen was first there, milliseconds since the page was asked for. */
    drawnAt?: number;
    /** How far things have moved by themselves, as the browser counts it (CLS). */
    shift?: number;
  }
}

const DIST = join(import.meta.dirname, "../../dist");

/** What a page has fetched of the app, kilobytes of 1000 bytes. */
export interface PageWeight {
  /** Script and style asked for before its screen was drawn, as gzip sends them. */
  readonly untilDrawn_kB: number;
  /** The same, with what came after it while nobody did anything. */
  readonly inAll_kB: number;
  /** Typeface. */
  readonly type_kB: number;
  /** How far things moved that nobody moved; 0 for nothing, 1 for the whole page by its height. */
  readonly shift: number;
}

const zippedBytes = (path: string) => gzipSync(readFileSync(join(DIST, path)), { level: 9 }).length;
const plainBytes = (path: string) => readFileSync(join(DIST, path)).length;
/** Sizes in bytes, so that the sum is exact. */
const sum_kB = (sizes: readonly number[]) => sizes.reduce((total, one) => total + one, 0) / 1000;

/**
 * Weighs a first visit, with nothing stored.
 *
 * @param address - of the built app
 * @param hash - the page in it
 * @param drawn - selects what is there only once the script has drawn the screen
 */
export async function pageWeight(browser: Browser, address: string, hash: string, drawn: string): Promise<PageWeight> {
  // A worker that stores the whole app for later is no part of a page.
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, serviceWorkers: "block" });
  try {
    // As text: what compiles this file names functions by a helper that a page does not have.
    await page.addInitScript(`new MutationObserver((_, watch) => {
      if (document.querySelector(${JSON.stringify(drawn)}) === null) return;
      window.drawnAt = performance.now();
      watch.disconnect();
    }).observe(document, { childList: true, subtree: true });
    window.shift = 0;
    new PerformanceObserver((list) => {
      for (const { value } of list.getEntries()) window.shift += value;
    }).observe({ type: "layout-shift", buffered: true });`);
    await page.goto(`${address}${hash}`);
    await page.waitForFunction(() => window.drawnAt !== undefined);
    await page.waitForLoadState("networkidle");
    const fetched = await page.evaluate(() =>
      performance.getEntriesByType("resource").map(({ name, startTime }) => ({
        path: new URL(name).pathname,
        isBefore: startTime < (window.drawnAt ?? 0),
      })),
    );
    const shift = await page.evaluate(() => window.shift ?? Number.NaN);
    const once = [...new Map(fetched.map((one) => [one.path, one])).values()];
    const code = once.filter(({ path }) => /\.(js|css)$/.test(path));
    return {
      untilDrawn_kB: sum_kB(code.filter(({ isBefore }) => isBefore).map(({ path }) => zippedBytes(path))),
      inAll_kB: sum_kB(code.map(({ path }) => zippedBytes(path))),
      shift,
      type_kB: sum_kB(once.filter(({ path }) => path.endsWith(".woff2")).map(({ path }) => plainBytes(path))),
    };
  } finally {
    await page.close();
  }
}
