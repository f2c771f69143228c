import type { Page } from "@playwright/test";
import { expect, test } from "../page";

declare global {
  interface Window {
    /** Sum of all layout shifts since the page began to load, as browsers score them. */
    shifted?: number;
  }
}

const WINDOWS = [
  { width: 1280, height: 800 },
  { width: 390, height: 844 },
] as const;
/** A tenth is called good; this is a fifth of that. */
const MOST_SHIFT = 0.02;
/** Most that the length of all lines together may change when the typeface comes, part of it. */
const MOST_CHANGE = 0.02;

/** Holds the typeface back until it is let in. */
async function withoutTypeface(page: Page): Promise<() => void> {
  let letIn: () => void = () => undefined;
  const isLetIn = new Promise<void>((resolve) => {
    letIn = resolve;
  });
  await page.route("**/*.woff2", async (route) => {
    await isLetIn;
    await route.continue();
  });
  return letIn;
}

const watchShifts = (page: Page) =>
  page.addInitScript(() => {
    window.shifted = 0;
    // On a coarse screen every letter is whole pixels wide, which hides how wide it is.
    const precise = new CSSStyleSheet();
    precise.replaceSync("* { text-rendering: geometricPrecision }");
    document.adoptedStyleSheets = [precise];
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries())
        window.shifted = (window.shifted ?? 0) + (entry as unknown as { value: number }).value;
    }).observe({ type: "layout-shift", buffered: true });
  });

/** Lengths of the lines that the page's head and its first heading or advice make, CSS pixels. */
const lengths = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll(".head-name, .head a, .start-now h1, .start-title, .advice-say")].map((element) => {
      const line = document.createRange();
      line.selectNodeContents(element);
      return [...line.getClientRects()].reduce((sum, { width }) => sum + width, 0);
    }),
  );

const total = (lines: readonly number[]) => lines.reduce((sum, length) => sum + length, 0);

for (const viewport of WINDOWS) {
  for (const address of ["#/start", "#/bench?seed=5"]) {
    test(`${address}, ${viewport.width} wide: drawn before the typeface comes, and nothing moves when it does`, async ({
      page,
    }) => {
      await page.setViewportSize(viewport);
      await watchShifts(page);
      const letIn = await withoutTypeface(page);
      // Its load event waits for the typeface, the picture does not.
      await page.goto(address, { waitUntil: "commit" });
      await expect(page.locator(".start-now, .advice-say").first()).toBeVisible();
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
      const before = await lengths(page);
      expect(before.length).toBeGreaterThan(9);
      expect(await page.evaluate(() => document.fonts.status)).toBe("loading");
      letIn();
      await page.waitForFunction(() => document.fonts.status === "loaded");
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
      const after = await lengths(page);
      expect(Math.abs(total(after) / total(before) - 1), `${before} and ${after}`).toBeLessThan(MOST_CHANGE);
      await page.waitForLoadState("networkidle");
      expect(await page.evaluate(() => window.shifted)).toBeLessThanOrEqual(MOST_SHIFT);
    });
  }
}

/** The app's own script does not come: what is to be seen is in the page. */
const withoutScript = (page: Page) =>
  page.route("**/assets/index-*.js", (route) => route.fulfill({ contentType: "text/javascript", body: "" }));

/** The same places, to less than half a pixel. */
const asPainted = (painted: readonly (string | number | null)[][]) =>
  painted.map((part) => part.map((one) => (typeof one === "number" ? expect.closeTo(one, 0) : one)));

/** Where the parts of the start page are, CSS pixels. */
const places = (page: Page) =>
  page.evaluate(() =>
    [".head-name", ".head nav", ".start-now h1", ".start-go", ".start-soft", ".start-picture svg", ".course li"].map(
      (selector) => {
        const { left, top, width, height } = document.querySelector(selector)?.getBoundingClientRect() ?? new DOMRect();
        return [selector, left, top, width, height];
      },
    ),
  );

for (const viewport of WINDOWS) {
  test(`${viewport.width} wide, head, lesson and dial are painted before any script, where the script draws them`, async ({
    page,
  }) => {
    await page.setViewportSize(viewport);
    await withoutScript(page);
    await page.goto("", { waitUntil: "load" });
    await expect(page.locator(".first-picture .start-go")).toBeVisible();
    await expect(page.locator(".start-picture .dial-number")).toHaveCount(30);
    const painted = await places(page);
    await page.unroute("**/assets/index-*.js");
    await page.reload();
    await expect(page.locator(".first-picture")).toHaveCount(0);
    expect(await places(page)).toEqual(asPainted(painted));
  });
}

/** Where the parts of the bench are that is seen, and each number of its dial, CSS pixels. */
const benchPlaces = (page: Page) =>
  page.evaluate(() =>
    [
      ".setup > *",
      ".strip-step",
      ".advice-say",
      ".advice-detail",
      ".dial",
      ".dial-number",
      ".hand-controls .button",
    ].map((selector) =>
      [...document.querySelectorAll(`.workplace ${selector}`)].map((part) => {
        const { left, top, width, height } = part.getBoundingClientRect();
        // The app writes the reading into the hub.
        const text = selector === ".dial" ? "" : part.textContent;
        return [selector, text, left, top, width, height];
      }),
    ),
  );

for (const viewport of WINDOWS) {
  for (const address of ["#/bench", "#/bench?profile=three-wheel&help=full"]) {
    test(`${address}, ${viewport.width} wide: painted before any script as the script draws it, its dial turned as far`, async ({
      page,
    }) => {
      let letThrough = () => {};
      const wait = new Promise<void>((resolve) => {
        letThrough = resolve;
      });
      await page.route("**/assets/index-*.js", async (route) => {
        await wait;
        await route.continue();
      });
      await page.setViewportSize(viewport);
      await watchShifts(page);
      await page.goto(address, { waitUntil: "commit" });
      await expect(page.locator(".first-bench .advice-say")).toBeVisible();
      await page.waitForFunction(() => document.fonts.status === "loaded");
      // Nobody is offered a dial that does not turn yet.
      await expect(page.getByRole("slider")).toHaveCount(0);
      const painted = await benchPlaces(page);
      expect(painted.flat().length).toBeGreaterThan(40);
      letThrough();
      await expect(page.locator(".first-picture")).toHaveCount(0);
      await expect(page.getByRole("slider", { name: "Dial" })).toBeVisible();
      expect((await benchPlaces(page)).flat()).toEqual(asPainted(painted.flat()));
      await page.waitForLoadState("networkidle");
      expect(await page.evaluate(() => window.shifted)).toBeLessThanOrEqual(MOST_SHIFT);
    });
  }
}

test("before its script another page shows its head alone, and who has been here is not greeted as a newcomer", async ({
  page,
}) => {
  await withoutScript(page);
  for (const address of ["#/zeroing", "#/bench?profile=two-wheel", "#/bench?seed=5"]) {
    await page.goto("about:blank");
    await page.goto(address);
    await expect(page.getByRole("navigation", { name: "Pages" })).toBeVisible();
    await expect(page.locator("main")).toHaveCount(2);
    for (const main of await page.locator("main").all()) await expect(main).toBeHidden();
  }
  await page.evaluate(() => {
    localStorage.setItem("gatefall.person", "somebody");
    localStorage.setItem("gatefall.theme", "dark");
  });
  await page.goto("about:blank");
  await page.goto("");
  await expect(page.locator(".course").first()).toBeVisible();
  await expect(page.locator(".start-go")).toBeHidden();
  await expect(page.locator(":root")).toHaveAttribute("data-theme", "dark");
});
