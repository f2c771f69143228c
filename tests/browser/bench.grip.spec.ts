import type { Page } from "@playwright/test";
import type { Bench } from "./bench";
import { mouse, placeOf } from "./hands";
import { expect, test } from "./page";

const PER_TURN = 100;
/** What a hand on whole pixels may be off, graduations. */
const A_PIXEL = 0.5;

/** A point on the rim, graduations left of straight up. */
async function rimAt(bench: Bench, at: number): Promise<readonly [number, number]> {
  const { x, y, radius } = await placeOf(bench);
  const angle = (at / PER_TURN) * 2 * Math.PI;
  return [Math.round(x - 0.8 * radius * Math.sin(angle)), Math.round(y - 0.8 * radius * Math.cos(angle))];
}

const afterFrames = (page: Page) =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

test.describe("a grip on the dial", () => {
  test("goes on round the new middle when the window changes under it, and does not jump", async ({ bench, page }) => {
    await page.setViewportSize({ width: 1600, height: 900 });
    await bench.open();
    const start = await bench.reading();
    const hand = mouse(page);
    await hand.down(...(await rimAt(bench, 10)));
    await hand.move(...(await rimAt(bench, 20)));
    await bench.expectReading(start + 10, PER_TURN, A_PIXEL);
    await page.setViewportSize({ width: 1240, height: 720 });
    await afterFrames(page);
    await bench.expectReading(start + 10, PER_TURN, A_PIXEL);
    // Where the dial is now, the pointer has a bearing of its own: going round by a quarter turn is a quarter turn.
    const { x, y } = await placeOf(bench);
    const radius = 150;
    await page.mouse.move(x, y - radius);
    const before = await bench.reading();
    await page.mouse.move(x - radius * Math.sin(Math.PI / 4), y - radius * Math.cos(Math.PI / 4));
    await page.mouse.move(x - radius, y);
    await bench.expectReading(before + 25, PER_TURN, A_PIXEL);
    await hand.up();
  });

  test("ends when a move comes without a button: the release was lost", async ({ bench, page }) => {
    await bench.open();
    const start = await bench.reading();
    await mouse(page).down(...(await rimAt(bench, 0)));
    await page.mouse.move(...(await rimAt(bench, 8)));
    await bench.expectReading(start + 8, PER_TURN, A_PIXEL);
    const moveWithout = async (at: number) => {
      const [clientX, clientY] = await rimAt(bench, at);
      await bench.dial.dispatchEvent("pointermove", {
        pointerId: 1,
        pointerType: "mouse",
        buttons: 0,
        clientX,
        clientY,
      });
    };
    await moveWithout(20);
    await moveWithout(30);
    await bench.expectReading(start + 8, PER_TURN, A_PIXEL);
    await page.mouse.move(...(await rimAt(bench, 40)));
    await bench.expectReading(start + 8, PER_TURN, A_PIXEL);
  });

  for (const type of ["pointercancel", "lostpointercapture"]) {
    test(`ends with ${type}`, async ({ bench, page }) => {
      await bench.open();
      const start = await bench.reading();
      await mouse(page).down(...(await rimAt(bench, 0)));
      await page.mouse.move(...(await rimAt(bench, 8)));
      await bench.dial.dispatchEvent(type, { pointerId: 1 });
      await page.mouse.move(...(await rimAt(bench, 20)));
      await bench.expectReading(start + 8, PER_TURN, A_PIXEL);
    });
  }

  test("ends when the window loses the focus", async ({ bench, page }) => {
    await bench.open();
    const start = await bench.reading();
    await mouse(page).down(...(await rimAt(bench, 0)));
    await page.mouse.move(...(await rimAt(bench, 8)));
    await bench.expectReading(start + 8, PER_TURN, A_PIXEL);
    await page.evaluate(() => dispatchEvent(new Event("blur")));
    await page.mouse.move(...(await rimAt(bench, 20)));
    await bench.expectReading(start + 8, PER_TURN, A_PIXEL);
  });
});

test("a mouse wheel over the dial scrolls the page, and turns the dial once it has the focus", async ({
  bench,
  page,
}) => {
  await page.setViewportSize({ width: 800, height: 700 });
  await bench.open();
  const start = await bench.reading();
  await page.mouse.move(...(await rimAt(bench, 0)));
  await page.mouse.wheel(0, 120);
  await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(50);
  await bench.expectReading(start, PER_TURN);
  const scrolled = await page.evaluate(() => scrollY);
  await bench.dial.focus();
  await page.mouse.move(...(await rimAt(bench, 50)));
  await page.mouse.wheel(0, 100);
  await bench.expectReading(start - 3, PER_TURN);
  expect(await page.evaluate(() => scrollY)).toBe(scrolled);
});
