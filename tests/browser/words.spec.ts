import { LOOKS, look, violations } from "./axe";
import { expect, test } from "./page";

test("an address leads to its word, marked and in view", async ({ page }) => {
  await page.goto("#/words?word=lost-motion");
  const word = page.getByRole("listitem").filter({ has: page.getByRole("heading", { name: "Lost motion" }) });
  await expect(word).toBeInViewport();
  await expect(word).toBeFocused();
  await page.goto("#/words?word=nonsense");
  await expect(page.getByRole("alert")).toContainText("There is no word “nonsense” here.");
});

test("words are found by part of their name or meaning", async ({ page }) => {
  await page.goto("#/words");
  await page.getByLabel("Find a word").fill("overshoot");
  await expect(page.getByRole("heading", { level: 3, name: "Overshoot: ran past, came back" })).toBeVisible();
  await expect(page.getByRole("heading", { level: 3, name: "Spindle" })).toHaveCount(0);
  await page.getByLabel("Find a word").fill("zzz");
  await expect(page.getByText("No word matches.")).toBeVisible();
});

test("every screen leads to the words, and a word in a text explains itself where it is", async ({ page }) => {
  for (const path of ["start", "bench", "zeroing", "handover", "sheets", "sittings", "logbook", "desk"]) {
    await page.goto(`#/${path}`);
    await expect(page.getByRole("link", { name: "Words", exact: true })).toHaveAttribute("href", "#/words");
  }
  await page.goto("#/start");
  const link = page.getByRole("link", { name: "arrival", exact: true });
  await link.click();
  const dialog = page.getByRole("dialog", { name: "What it means" });
  await expect(dialog.getByRole("heading", { name: "Arrival" })).toBeVisible();
  await expect(dialog.locator("svg")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(dialog).toBeHidden();
  await expect(link).toBeFocused();
  await expect(page).toHaveURL(/#\/start$/);
});

test("axe finds nothing wrong on the page of words, light or dark, on a desk or a phone", { tag: "@long" }, async ({
  page,
}) => {
  for (const one of LOOKS) {
    await look(page, one);
    await page.goto("#/words?word=gate");
    await expect(page.getByRole("heading", { level: 1, name: "Words" })).toBeAttached();
    expect(await violations(page), one.name).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), one.name).toBe(true);
  }
});
