import { expect, type Locator, type Page } from "@playwright/test";
import { idealMotion } from "../../src/dialing/idealMotion";
import type { Sheet } from "../../src/drill/sheet/sheet";
import { sheetToLink } from "../../src/drill/sheet/sheetLink";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { Bench } from "./bench";
import { KeyHand } from "./hands";

const PROFILE = shippedProfile("three-wheel");

/** Opens a sheet to be sat, with its instructions on the screen. */
export async function openSheet(page: Page, sheet: Sheet): Promise<void> {
  await page.goto(`#/sittings?seed=5&sheet=${sheetToLink(sheet)}`);
  await page.getByRole("button", { name: "I have read it" }).focus();
}

const dialOf = (page: Page) => page.getByRole("slider", { name: "Dial" });

/** Starts a sitting by a sheet, up to its first dial. @param work - where its first try has the focus, if not on a dial */
export async function start(page: Page, sheet: Sheet, work: Locator = dialOf(page)): Promise<void> {
  await openSheet(page, sheet);
  await startHere(page, work);
}

/** Starts the sitting whose instructions are on the screen, up to its first dial. @param work - see `start` */
export async function startHere(page: Page, work: Locator = dialOf(page)): Promise<void> {
  await page.getByRole("button", { name: "I have read it" }).press("Enter");
  await expect(page.locator(":focus")).toHaveAccessibleName(/your name$|^Start the clock$/i);
  // Where nobody has practiced yet the field for a name has the focus; on a button, letters do nothing.
  await page.keyboard.type("Orrin");
  await page.keyboard.press("Enter");
  await expect(work).toBeFocused();
}

/**
 * Dials the three-wheel lock's own combination by keys.
 *
 * @param stopErrors - graduations past each number
 * @param stops - how many of its stops, the end of the draw the last; all where left out
 */
export async function dialLast(page: Page, stopErrors: readonly number[] = [], stops?: number): Promise<void> {
  const bench = new Bench(page);
  const hand = new KeyHand(bench, PROFILE.graduations);
  const path = idealMotion(PROFILE, PROFILE.asSet ?? [], await bench.reading(), stopErrors, 5);
  const asked = stops === undefined ? path : path.slice(0, stops + 1);
  for (const [i, position] of asked.slice(1).entries()) await hand.turnBy(position - (asked[i] ?? 0));
}

/** Dials, and waits for what follows a try that is not the last. */
export async function dialIt(page: Page, stopErrors: readonly number[] = []): Promise<void> {
  await dialLast(page, stopErrors);
  await expect(page.getByTestId("try-state")).toHaveText(/^This try has ended/);
}

/** The sentence that tells what a sitting came to. */
export const verdict = (page: Page) => page.getByRole("region", { name: "Verdict" }).getByRole("status");
