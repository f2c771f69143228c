import type { Page } from "@playwright/test";
import { idealMotion } from "../../../src/dialing/idealMotion";
import { SHIPPED_PROFILES, shippedProfile } from "../../../src/lock/shippedProfiles";
import type { Bench } from "../bench";
import { KeyHand } from "../hands";
import { expect, test } from "../page";

const dialog = (page: Page) => page.getByRole("dialog");

/** Turns a lock, as it is set, through stops with these errors. */
async function dial(bench: Bench, id: string, errors: readonly number[] = []): Promise<void> {
  const profile = shippedProfile(id);
  const hand = new KeyHand(bench, profile.graduations);
  const path = idealMotion(profile, profile.asSet ?? [], await bench.reading(), errors, 5);
  for (const [i, position] of path.slice(1).entries()) await hand.turnBy(position - (path[i] ?? 0));
}

/** Texts on the page in type smaller than 11 pixels of the screen, a drawing's scale included. */
const smallType = (page: Page) =>
  page.locator("body *:not(.visually-hidden, .visually-hidden *, title, script, style)").evaluateAll((elements) => {
    const ownText = (element: Element) =>
      [...element.childNodes]
        .map((node) => (node.nodeType === Node.TEXT_NODE ? node.textContent?.trim() : ""))
        .join("");
    const scaleOf = (element: Element) => element.closest("svg")?.getScreenCTM()?.a ?? 1;
    return elements
      .filter((element) => ownText(element) !== "" && element.checkVisibility())
      .map((element) => ({
        text: ownText(element),
        size: Number.parseFloat(getComputedStyle(element).fontSize) * scaleOf(element),
      }))
      .filter(({ size }) => size < 10.95)
      .map(({ text, size }) => `${text}: ${size.toFixed(1)}`);
  });

for (const [width, height] of [
  [1280, 800],
  [1180, 700],
  [440, 900],
  [390, 844],
  [320, 700],
] as const) {
  test(`no type on the bench is smaller than 11 pixels in a window of ${width} by ${height}`, async ({
    bench,
    page,
  }) => {
    await page.setViewportSize({ width, height });
    for (const { id } of SHIPPED_PROFILES) {
      await bench.open({ profile: id });
      expect(await smallType(page), id).toEqual([]);
    }
    await dial(bench, SHIPPED_PROFILES.at(-1)?.id ?? "", [0, 4]);
    await expect(bench.result.locator(".result-headline")).toBeVisible();
    expect(await smallType(page)).toEqual([]);
  });
}

for (const width of [1280, 390, 360]) {
  test(`five arrivals are drawn as five on the four-wheel lock, in a window ${width} wide`, async ({ bench, page }) => {
    await page.setViewportSize({ width, height: 844 });
    await bench.open({ profile: "four-wheel" });
    const profile = shippedProfile("four-wheel");
    const [start = 0, first = 0, second = 0] = idealMotion(profile, profile.asSet ?? [], await bench.reading(), [], 0);
    const hand = new KeyHand(bench, 100);
    await hand.turnBy(first - start);
    const marks = bench.steps.first().locator(".pip-made");
    await expect(marks).toHaveCount(5);
    const cell = await bench.steps.first().boundingBox();
    for (const mark of await marks.all()) {
      const box = await mark.boundingBox();
      expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual((cell?.x ?? 0) + (cell?.width ?? 0));
      expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual((cell?.y ?? 0) + (cell?.height ?? 0));
    }
    await hand.turnBy((second - first) / 10);
    // The fifth arrival is the stop: it bears the sign of both.
    await expect(bench.chart.locator("[role=option] .turn-chart-arrival")).toHaveCount(5);
  });
}

test("a long result says that it goes on below, and stops saying so at its end", async ({ bench, page }) => {
  await page.setViewportSize({ width: 1280, height: 730 });
  await bench.open({ profile: "four-wheel" });
  await dial(bench, "four-wheel", [3, 3, 3, 3]);
  await expect(bench.result.getByText("Scroll down for more")).toBeVisible();
  await bench.result.evaluate((panel) => panel.scrollTo(0, panel.scrollHeight));
  await expect(bench.result.getByText("Scroll down for more")).toHaveCount(0);
});

test("a replay that starts out of view comes into view", async ({ bench, page }) => {
  await page.setViewportSize({ width: 390, height: 480 });
  await bench.open({ profile: "two-wheel" });
  await bench.button("Share").click();
  await dialog(page)
    .getByLabel("A recorded attempt to load")
    .fill('{"profile":"three-wheel","combination":[38,71,26],"positions":[0,338,71,126,90]}');
  await bench.button("Load and replay").click();
  await expect(page.getByRole("slider", { name: "Time in the replay" })).toBeInViewport({ ratio: 1 });
  await expect(bench.chart).toBeInViewport({ ratio: 0.95 });
});

test.describe("a message", () => {
  test("about a lock file covers nothing, and is closed", async ({ bench, page }) => {
    await bench.open({ profile: "four-wheel" });
    const buffer = Buffer.from("a lock");
    await page
      .getByLabel("Load a lock profile file")
      .setInputFiles({ name: "mine.json", mimeType: "text/plain", buffer });
    const message = page.getByRole("alert").filter({ hasText: "mine.json" });
    await expect(message).toBeVisible();
    const box = await page.locator(".bench-message").boundingBox();
    const strip = await page.getByRole("list", { name: "Combination and turns" }).boundingBox();
    const setup = await page.getByLabel("Lock", { exact: true }).boundingBox();
    for (const other of [strip, setup]) {
      const isApart =
        (box?.y ?? 0) + (box?.height ?? 0) <= (other?.y ?? 0) ||
        (other?.y ?? 0) + (other?.height ?? 0) <= (box?.y ?? 0);
      expect(isApart).toBe(true);
    }
    await page.emulateMedia({ media: "print" });
    await expect(message).toBeHidden();
    await page.emulateMedia({ media: "screen" });
    await page.getByRole("button", { name: "Close this message" }).click();
    await expect(message).toHaveCount(0);
  });

  test("says of every part of an address what is wrong with it and what the bench does instead", async ({
    bench,
    page,
  }) => {
    await page.goto("#/bench?profile=safe&help=loud&dial=stiff&seed=x&combination=38-ab-26");
    await bench.dial.waitFor();
    await expect(page.locator(".bench-message p")).toHaveText([
      `The address asks for the lock "safe". There is none; the bench uses "${shippedProfile("three-wheel").title}".`,
      'The address asks for the help "loud". There is none; the bench uses "full". Write full, counts or silent.',
      'The address asks for the dial "stiff". There is none; the bench uses "usual". Write usual, heavy or light.',
      'The address asks for the seed "x", which is not a number. The bench uses one of its own.',
      'The address asks for the combination "38-ab-26". The second number is not a number. The bench uses the combination as set.',
    ]);
    await page.getByRole("button", { name: "Close this message" }).first().click();
    await expect(page.locator(".bench-message")).toHaveCount(4);
  });
});

test("the first Tab leads to a link that skips to the dial", async ({ bench, page }) => {
  await bench.open();
  await page.keyboard.press("Tab");
  const skip = page.getByRole("link", { name: "Skip to the dial" });
  await expect(skip).toBeFocused();
  await expect(skip).toBeInViewport({ ratio: 1 });
  await page.keyboard.press("Enter");
  await expect(bench.dial).toBeFocused();
});

test.describe("a dialog", () => {
  for (const { opens, field } of [
    { opens: /^Combination/, field: /^As set/ },
    { opens: /^More/, field: /^Usual/ },
  ]) {
    test(`opened by ${opens.source} has the focus on its first field, and the page behind stays`, async ({
      bench,
      page,
    }) => {
      await page.setViewportSize({ width: 390, height: 844 });
      await bench.open();
      await page.evaluate(() => scrollTo(0, 40));
      await page.getByRole("button", { name: opens }).click();
      await expect(dialog(page).getByRole("radio", { name: field })).toBeFocused();
      const before = await page.evaluate(() => scrollY);
      await page.mouse.move(195, 835);
      await page.mouse.wheel(0, 400);
      await page.evaluate(() => new Promise((done) => setTimeout(done, 300)));
      expect(await page.evaluate(() => scrollY)).toBe(before);
    });
  }
});

test("stop errors are apart from their numbers, for the eye and for the ear", async ({ bench }) => {
  await bench.open({ profile: "three-wheel", help: "full" });
  await dial(bench, "three-wheel", [0.4]);
  await expect(bench.steps.first()).toContainText("38 stop error +0.4");
});
