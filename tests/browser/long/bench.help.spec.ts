import type { Page } from "@playwright/test";
import { idealMotion } from "../../../src/dialing/idealMotion";
import type { Graduations } from "../../../src/lock/dial";
import { shippedProfile } from "../../../src/lock/shippedProfiles";
import type { Bench, BenchAsked } from "../bench";
import { KeyHand } from "../hands";
import { expect, test } from "../page";

const THREE = { profile: "three-wheel", combination: "38-71-26" } as const;
const NUMBERS = [38, 71, 26];

/** Opens a bench at 38-71-26 and turns it through the stops of a hand with these stop errors, up to the end of the draw. */
async function dial(bench: Bench, asked: BenchAsked, errors: readonly Graduations[] = []): Promise<KeyHand> {
  await bench.open({ ...THREE, ...asked });
  return dialOn(bench, errors);
}

async function dialOn(bench: Bench, errors: readonly Graduations[] = [], stops = 9): Promise<KeyHand> {
  const hand = new KeyHand(bench, 100);
  const path = idealMotion(shippedProfile("three-wheel"), NUMBERS, await bench.reading(), errors, 5).slice(
    0,
    stops + 1,
  );
  for (const [i, position] of path.slice(1).entries()) await hand.turnBy(position - (path[i] ?? 0));
  return hand;
}

/** Everything that is written on the page, to be seen or to be heard. */
const written = (page: Page) =>
  page.evaluate(() => {
    const spoken = [...document.querySelectorAll("[aria-label], title")].map(
      (one) => one.getAttribute("aria-label") ?? one.textContent ?? "",
    );
    return [document.querySelector("main")?.textContent ?? "", ...spoken].join(" | ");
  });

test.describe("with the help Counts", () => {
  test("nothing on the page tells a distance while one dials", async ({ bench, page }) => {
    await bench.open({ ...THREE, help: "counts" });
    await dialOn(bench, [0.4, 3], 2);
    await new KeyHand(bench, 100).turnBy(40);
    await bench.chart.hover();
    // "0.1" is a button, and times are in seconds.
    const text = (await written(page)).replaceAll(/0\.1|\d+\.\d s/g, "");
    expect(text).not.toMatch(/\d\.\d/);
    expect(text).not.toMatch(/graduations? (past|short|off)|to go/);
    await expect(bench.result).toContainText("Ran past at number 2.");
    await expect(bench.cutaway).toContainText("off its gate");
    await expect(bench.fault).toHaveText("Ran past at number 2.");
  });

  test("the end brings the distances: it is over, and one learns from them", async ({ bench }) => {
    await dial(bench, { help: "counts" }, [0, 3]);
    await expect(bench.result).toContainText("You ran 3.0 graduations past 71.");
    await expect(bench.result.getByRole("row", { name: /^71 / })).toContainText("+3.0 past");
  });
});

for (const help of ["counts", "silent"] as const) {
  for (const [width, height] of [
    [1280, 800],
    [390, 844],
  ] as const) {
    test(`with the help ${help}, a line above the dial says how it ended, in a window of ${width} by ${height}`, async ({
      bench,
      page,
    }) => {
      await page.setViewportSize({ width, height });
      await dial(bench, { help });
      await expect(bench.say).toHaveText("Open. Turn left to throw the bolt, then spin off.");
      await expect(bench.say).toBeInViewport({ ratio: 1 });
      const [line, round] = [await bench.say.boundingBox(), await bench.dial.boundingBox()];
      expect((line?.y ?? 0) + (line?.height ?? 0)).toBeLessThanOrEqual(round?.y ?? 0);
      await page.keyboard.press("r");
      await dialOn(bench, [0, 3]);
      await expect(bench.say).toHaveText(/^It did not open\. Start over/);
      await expect(bench.say).toBeInViewport({ ratio: 1 });
    });
  }
}

test.describe("the moment a lock opens", () => {
  const ring = (page: Page) => page.locator(".dial-open-ring");
  const offset = (page: Page) =>
    ring(page).evaluate((one) => Number.parseFloat(getComputedStyle(one).strokeDashoffset));

  test("is seen on the dial until the bolt is thrown", async ({ bench, page }) => {
    await bench.open({ ...THREE, help: "silent" });
    await expect(ring(page)).toHaveCount(0);
    const hand = await dialOn(bench);
    await expect(ring(page)).toBeVisible();
    await expect(bench.dial.locator(".dial-reading")).toHaveText("Open");
    await hand.turnBy(30);
    await expect(ring(page)).toHaveCount(0);
    await expect(bench.dial.locator(".dial-reading")).toHaveCount(0);
  });

  test("moves once, and not at all for whoever wants less motion", async ({ bench, page }) => {
    await page.emulateMedia({ reducedMotion: "no-preference" });
    await dial(bench, { help: "counts" });
    await expect.poll(() => ring(page).evaluate((one) => one.getAnimations().length)).toBe(0);
    expect(await offset(page)).toBe(0);
    await ring(page).evaluate((one) => {
      one.remove();
    });
    await page.emulateMedia({ reducedMotion: "reduce" });
    await page.reload();
    await dialOn(bench);
    await expect(ring(page)).toBeVisible();
    expect(await ring(page).evaluate((one) => Number.parseFloat(getComputedStyle(one).animationDuration))).toBeLessThan(
      0.001,
    );
  });

  for (const isOn of [true, false]) {
    test(`is ${isOn ? "heard" : "not heard"} with the sound ${isOn ? "on" : "off"}`, async ({ bench, page }) => {
      await page.addInitScript(() => {
        const heard: number[] = [];
        Object.assign(globalThis, { heard });
        const start = OscillatorNode.prototype.start;
        OscillatorNode.prototype.start = function (when) {
          heard.push(this.frequency.value);
          start.call(this, when);
        };
      });
      await bench.open({ ...THREE, help: "counts" });
      if (isOn) await page.getByRole("button", { name: "Sound off" }).click();
      await dialOn(bench);
      await expect(bench.state).toHaveText(/^Opened/);
      const heard = await page.evaluate(() => (globalThis as { heard?: number[] }).heard ?? []);
      if (!isOn) expect(heard).toEqual([]);
      // The thud of the stop, and three tones that rise.
      else expect(heard.slice(-4).map(Math.round)).toEqual([85, 392, 523, 784]);
    });
  }
});

test("spinning off counts the turns down, and says which wheels are still at their numbers", async ({ bench }) => {
  const hand = await dial(bench, { help: "silent" });
  await hand.turnBy(30);
  await expect(bench.detail).toHaveText("wheels 1, 2 and 3 are still at their numbers");
  await hand.turnBy(20);
  await expect(bench.say).toHaveText(/^Not secure yet\. Spin off: keep turning left, 3\.\d turns to go\.$/);
  await expect(bench.detail).toHaveText("wheels 1 and 2 are still at their numbers");
  await expect(bench.state).toHaveText(
    "Not secure yet. Keep turning left, four more turns. Wheels 1 and 2 are still at their numbers.",
  );
  await hand.turnBy(200);
  await expect(bench.say).toHaveText(/1\.\d turns to go\.$/);
  await expect(bench.state).toHaveText(
    "Not secure yet. Keep turning left, two more turns. No wheel is at the combination now.",
  );
  await hand.turnBy(200);
  await expect(bench.say).toHaveText("Secured.");
});

test.describe("the digits in the hub", () => {
  const digits = (bench: Bench) => bench.dial.locator(".dial-reading");
  const open = async (bench: Bench, page: Page) => {
    await dialOn(bench);
    await expect(bench.state).toHaveText(/^Opened/);
    await page.keyboard.press("r");
  };

  test("fade with the first lessons, are called back by key and by button, and stay in the spoken value", async ({
    bench,
    page,
  }) => {
    await bench.open({ ...THREE, help: "full" });
    await expect(digits(bench)).toHaveText(/^\d+\.\d$/);
    await expect(digits(bench)).toHaveCSS("opacity", "1");
    for (let lesson = 1; lesson <= 3; lesson++) await open(bench, page);
    await expect(digits(bench)).toHaveCSS("opacity", "0.4");
    for (let lesson = 4; lesson <= 6; lesson++) await open(bench, page);
    await expect(digits(bench)).toHaveCount(0);
    await expect(bench.cutaway).not.toContainText(/cam ?at \d/);
    await expect(bench.dial).toHaveAttribute("aria-valuetext", /[a-z]/);
    await page.keyboard.press("d");
    await expect(digits(bench)).toHaveText(/^\d+\.\d$/);
    await page.getByRole("button", { name: "Hide digits D" }).click();
    await expect(digits(bench)).toHaveCount(0);
    await page.getByRole("button", { name: "Show digits D" }).click();
    await page.reload();
    await expect(digits(bench)).toHaveText(/^\d+\.\d$/);
  });

  test("are not there with less help, and no key brings them", async ({ bench, page }) => {
    await bench.open({ ...THREE, help: "counts" });
    await bench.dial.focus();
    await page.keyboard.press("d");
    await expect(digits(bench)).toHaveCount(0);
    await expect(page.getByRole("button", { name: /digits/ })).toHaveCount(0);
  });
});
