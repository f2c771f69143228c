import type { Page } from "@playwright/test";
import { expect, test } from "./page";

/** What the page leaves for the test. */
interface WatchedWindow {
  touched: Record<"setup" | "cutaway", string[]>;
}

/** Notes from now on what is done to the bar of settings, and what the cutaway makes anew. */
const watch = (page: Page) =>
  page.evaluate(() => {
    const { touched } = Object.assign(window as unknown as WatchedWindow, { touched: { setup: [], cutaway: [] } });
    const note = (into: string[]) => (changes: MutationRecord[]) =>
      void into.push(...changes.map((change) => `${change.type} of ${change.target.nodeName}`));
    const observe = (part: string, into: string[], what: MutationObserverInit) =>
      new MutationObserver(note(into)).observe(document.querySelector(part) ?? document, { ...what, subtree: true });
    observe(".setup", touched.setup, { childList: true, attributes: true, characterData: true });
    observe(".cutaway", touched.cutaway, { childList: true });
  });

test("a move of the dial leaves the bar of settings alone, and changes the cutaway's words in their place", async ({
  bench,
  page,
}) => {
  await bench.open({ help: "full" });
  const words = page.getByRole("region", { name: "Cutaway" }).getByRole("list").last();
  const before = await words.textContent();
  await watch(page);
  await page.getByRole("button", { name: "Left by 10", exact: true }).click();
  await expect(words).not.toHaveText(before ?? "");
  expect(await page.evaluate(() => (window as unknown as WatchedWindow).touched)).toEqual({ setup: [], cutaway: [] });
});
