import type { Page } from "@playwright/test";
import { expect, test } from "../page";

/** Smallest type that is read without effort at arm's length, CSS pixels. */
const SMALLEST = 11;

const ROUTES = [
  "start",
  "bench?seed=5",
  "bench?profile=dial-encoder&seed=5",
  "zeroing",
  "handover?view=run",
  "handover?view=change",
  "handover?view=trouble",
  "handover?view=holdback",
  "handover?view=record",
  "sheets",
  "fitting",
  "fitting?view=service&seed=3",
  "fitting?view=find",
  "sittings",
  "sittings?sheet=round-and-round",
  "logbook?view=attempts",
  "logbook?view=progress",
  "logbook?view=sittings",
  "logbook?view=jobs",
  "logbook?view=files",
  "desk",
  "words",
  "dial",
  "dial?view=print",
  "join",
  "instructor",
];

/** Every text in sight, with the size it is drawn at, CSS pixels; drawings count as they are scaled. */
const textsInSight = (page: Page) =>
  page.evaluate(() => {
    const inSight = (element: Element) => {
      const { width, height } = element.getBoundingClientRect();
      return (
        width >= 2 &&
        height >= 2 &&
        element.checkVisibility({ visibilityProperty: true, opacityProperty: true }) &&
        element.closest(".visually-hidden, option, script, style, title, desc") === null
      );
    };
    const scaleOf = (element: Element) => {
      const matrix = element instanceof SVGGraphicsElement ? element.getScreenCTM() : null;
      return matrix === null ? 1 : Math.hypot(matrix.a, matrix.b);
    };
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT, ({ parentElement, textContent }) =>
      parentElement !== null && textContent?.trim() !== "" && inSight(parentElement)
        ? NodeFilter.FILTER_ACCEPT
        : NodeFilter.FILTER_REJECT,
    );
    const found: { readonly size: number; readonly where: string }[] = [];
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const element = node.parentElement ?? document.body;
      const size = Number.parseFloat(getComputedStyle(element).fontSize) * scaleOf(element);
      found.push({ size, where: `<${element.tagName} ${element.getAttribute("class")}> ${node.textContent?.trim()}` });
    }
    return found;
  });

for (const [name, size] of [
  ["a desk", { width: 1280, height: 800 }],
  ["a phone", { width: 390, height: 844 }],
] as const) {
  test(`no text is smaller than 11 pixels on ${name}, on any page`, async ({ page }) => {
    await page.setViewportSize(size);
    await page.goto("#/logbook?view=files");
    await page.getByRole("button", { name: "Load the demo" }).click();
    await expect(page.getByRole("button", { name: "Remove the demo" })).toBeVisible();
    for (const route of ROUTES) {
      await page.goto(`#/${route}`);
      await expect(page.getByRole("main").getByText(/\w/).first()).toBeAttached();
      await page.waitForTimeout(250);
      const texts = await textsInSight(page);
      expect(texts.length, route).toBeGreaterThan(10);
      // A scale that comes out a hair under a whole pixel is none that an eye sees.
      const small = texts.filter(({ size: drawn }) => drawn < SMALLEST - 0.05);
      expect
        .soft(
          small.map(({ size: drawn, where }) => `${drawn.toFixed(1)} px ${where}`),
          `${route} on ${name}`,
        )
        .toEqual([]);
    }
  });
}
