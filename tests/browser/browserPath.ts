import { existsSync } from "node:fs";
import { chromium } from "@playwright/test";

/** A browser without windows: half the work for a processor. */
const SHELLS = ["/usr/bin/chromium-headless-shell"];
const WHOLE = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/** The first place where there is one; CHROMIUM_PATH goes before all. */
const firstOf = (places: readonly string[]) =>
  [process.env.CHROMIUM_PATH, ...places].find((place) => place !== undefined && existsSync(place));

/** Where a browser for the tests is, one without windows before others, or undefined. */
export const browserPath = () => firstOf([...SHELLS, ...WHOLE, chromium.executablePath()]);

/** Where a browser as people have it is, before one without windows: for what is measured, not tested. Or undefined. */
export const wholeBrowserPath = () => firstOf([...WHOLE, chromium.executablePath(), ...SHELLS]);

/** Whether a browser without windows is there, or one was named. */
export const hasQuickBrowser = () => firstOf(SHELLS) !== undefined;

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
