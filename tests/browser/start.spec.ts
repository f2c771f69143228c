import { idealMotion } from "../../src/dialing/idealMotion";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { LOOKS, look, violations } from "./axe";
import { KeyHand } from "./hands";
import { expect, test } from "./page";

test("a first visit opens at lesson 1, and its one main button begins it", async ({ page }) => {
  await page.goto("");
  await expect(page.getByRole("heading", { level: 1, name: "Start here" })).toBeVisible();
  await expect(page.getByText("Lesson 1, Round and round")).toBeVisible();
  await expect(page.getByText("about 4 minutes, 10 tries")).toBeVisible();
  await expect(page.getByRole("heading", { name: "Today’s two minutes" })).toHaveCount(0);
  await page.getByRole("link", { name: "Start with lesson 1" }).click();
  await expect(page).toHaveURL(/#\/sittings\?sheet=round-and-round$/);
  await expect(page.getByRole("main")).toContainText("Round and round");
  await expect(page.getByRole("main")).toContainText("Dial only its first number");
});

test("later visits go on with the course, offer what was missed, and name a number to beat", async ({
  bench,
  page,
}) => {
  await bench.open();
  const profile = shippedProfile("three-wheel");
  const hand = new KeyHand(bench, profile.graduations);
  // Once past the second number, once right.
  for (const stopErrors of [[0, 3], []]) {
    const path = idealMotion(profile, profile.asSet ?? [], await bench.reading(), stopErrors, 5);
    for (const [i, position] of path.slice(1).entries()) await hand.turnBy(position - (path[i] ?? 0));
  }
  await expect(bench.state).toHaveText(/^Opened/);
  await page.goto("#/start");
  await expect(page.getByRole("heading", { level: 1, name: "Go on with lesson 1" })).toBeVisible();
  await expect(page.getByRole("heading", { name: "Your number to beat" })).toBeVisible();
  await expect(page.getByRole("link", { name: "Beat it on the bench" })).toHaveAttribute(
    "href",
    "#/bench?profile=three-wheel&help=full",
  );
  await page.getByRole("link", { name: "Practice for two minutes" }).click();
  await expect(page.getByText("Two minutes").first()).toBeVisible();
});

test("any lesson can be chosen at any time", async ({ page }) => {
  await page.goto("#/start");
  const lessons = page.getByRole("region", { name: /The course/ }).getByRole("link");
  await expect(lessons).toHaveCount(18);
  await page.getByRole("link", { name: /Lesson 14: First handover/ }).click();
  await expect(page).toHaveURL(/sheet=first-handover$/);
});

test("an address that leads nowhere leads to the start", async ({ page }) => {
  await page.goto("#/nowhere");
  await expect(page.getByRole("heading", { level: 1, name: "Start here" })).toBeVisible();
});

test("axe finds nothing wrong on the start page, light or dark, on a desk or a phone", async ({ page }) => {
  for (const one of LOOKS) {
    await look(page, one);
    await page.goto("#/start");
    await expect(page.getByRole("heading", { name: "Start here" })).toBeVisible();
    expect(await violations(page), one.name).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), one.name).toBe(true);
  }
});

test("the Tab key first offers to skip the head, to the dial where there is one", async ({ page }) => {
  await page.goto("#/start");
  await expect(page.getByRole("heading", { name: "Start here" })).toBeVisible();
  await page.keyboard.press("Tab");
  await expect(page.getByRole("link", { name: "Skip to the content" })).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("main")).toBeFocused();
  await expect(page).toHaveURL(/#\/start$/);
  for (const path of ["bench", "zeroing"]) {
    await page.goto(`#/${path}`);
    const dial = page.getByRole("slider", { name: "Dial" });
    await expect(dial).toBeVisible();
    const link = page.getByRole("link", { name: "Skip to the dial" });
    // The bench puts the focus on its dial by itself; here it comes from above.
    await link.focus();
    await expect(link, path).toBeInViewport();
    await page.keyboard.press("Enter");
    await expect(dial, path).toBeFocused();
    await expect(page).toHaveURL(new RegExp(`#/${path}(\\?|$)`));
  }
});

test("who has gone into the page before its script has come stays where they are", async ({ page }) => {
  let letThrough = () => {};
  const wait = new Promise<void>((resolve) => {
    letThrough = resolve;
  });
  await page.route(/assets\/index-[^/]*\.js$/, async (route) => {
    await wait;
    await route.continue();
  });
  await page.goto("#/start", { waitUntil: "commit" });
  await expect(page.locator(".first-picture")).toBeVisible();
  for (let tab = 1; tab <= 3; tab++) await page.keyboard.press("Tab");
  const link = page.getByRole("link", { name: "Bench", exact: true });
  await expect(link).toBeFocused();
  letThrough();
  await expect(page.locator(".first-picture")).toHaveCount(0);
  await expect(link).toBeFocused();
});

test("who goes on in the moment in which the bench is drawn gets where they went", async ({ page }) => {
  await page.addInitScript(() => {
    new MutationObserver((_, watch) => {
      if (document.querySelector('main [role="slider"]') === null) return;
      watch.disconnect();
      location.hash = "#/sittings";
    }).observe(document, { childList: true, subtree: true });
  });
  await page.goto("#/bench");
  await expect(page.getByRole("heading", { name: "Choose a sheet" })).toBeVisible();
  expect(page.url()).toMatch(/#\/sittings$/);
});

test("on a phone the row of pages fades where it goes on, and the page that is open is in view", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto("#/start");
  const row = page.getByRole("navigation", { name: "Pages" });
  await expect(row).toHaveAttribute("data-after", "true");
  await expect(row).toHaveAttribute("data-before", "false");
  expect(await row.evaluate((element) => getComputedStyle(element).maskImage)).toContain("linear-gradient");
  await page.goto("#/words");
  await expect(row.getByRole("link", { name: "Words" })).toBeInViewport();
  await expect(row).toHaveAttribute("data-after", "false");
  await expect(row).toHaveAttribute("data-before", "true");
});

test("printed, a page comes without the head", async ({ page }) => {
  await page.goto("#/words");
  await expect(page.getByRole("banner")).toBeVisible();
  await page.emulateMedia({ media: "print" });
  await expect(page.getByRole("banner")).toBeHidden();
});
