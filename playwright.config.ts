import { defineConfig } from "@playwright/test";
import { BROWSER_SWITCHES, browserPath } from "./tests/browser/browserPath";

/** Two runs at once on one machine need two ports. */
const PORT = process.env.BROWSER_TEST_PORT ?? "4179";
/** Walks, kills, attacks, and what only repeats a short test elsewhere: `npm run trials` makes them, `npm test` does not. */
const LONG = / long\/|@long/;
const PAGE = `http://127.0.0.1:${PORT}/`;

export default defineConfig({
  testDir: "tests/browser",
  outputDir: "test-results/browser",
  snapshotPathTemplate: "tests/browser/pictures/{arg}{ext}",
  timeout: 60_000,
  workers: 2,
  // Keys and pointers are real, so a stalled machine can hold a key too long: there a test may be tried again.
  retries: process.env.CI === undefined ? 0 : 2,
  fullyParallel: true,
  projects: [
    { name: "quick", grepInvert: LONG },
    { name: "trials", grep: LONG },
  ],
  reporter: [["list"], ["json", { outputFile: "test-results/browser.json" }]],
  use: {
    baseURL: PAGE,
    // A worker that serves pages from its store hides what a page asks for; offline.spec.ts lets it in again.
    serviceWorkers: "block",
    viewport: { width: 1280, height: 800 },
    launchOptions: { executablePath: browserPath() ?? "", args: BROWSER_SWITCHES },
    screenshot: "only-on-failure",
  },
  webServer: {
    command: `npx vite preview --port ${PORT} --strictPort`,
    url: PAGE,
    reuseExistingServer: false,
  },
});
