import { existsSync } from "node:fs";
import { chromium } from "@playwright/test";

const PLACES = [
  process.env.CHROMIUM_PATH,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/** Where a browser for the tests is, or undefined. CHROMIUM_PATH names another one. */
export function browserPath(): string | undefined {
  return [...PLACES, chromium.executablePath()].find((place) => place !== undefined && existsSync(place));
}

/** Switches that keep a test browser to itself: no sandbox for root, no background traffic. */
export const BROWSER_SWITCHES = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];
