import type { Page } from "@playwright/test";
import { idealMotion } from "../../../src/dialing/idealMotion";
import type { Graduations } from "../../../src/lock/dial";
import type { Profile } from "../../../src/lock/profile";
import { SHIPPED_PROFILES, shippedProfile } from "../../../src/lock/shippedProfiles";
import type { Bench } from "../bench";
import { type DialPlace, Fingers, KeyHand, mouse, type Pointer, placeOf, RoundHand } from "../hands";
import { expect, test } from "../page";
import { serveBuilt } from "../staticServer";

const PER_TURN = 100;
/** What whole pixels at the rim may be off, graduations. */
const A_PIXEL = 0.3;

/** A point round the dial: graduations left of straight up, at a part of the radius. */
function pointAt({ x, y, radius }: DialPlace, angle: Graduations, part = 0.8): [number, number] {
  const radians = (angle / PER_TURN) * 2 * Math.PI;
  return [Math.round(x - radius * part * Math.sin(radians)), Math.round(y - radius * part * Math.cos(radians))];
}

/** Lets the page draw a few times: what goes on turning by itself has turned by then. */
const afterFrames = (page: Page, count = 12) =>
  page.evaluate(
    (frames) =>
      new Promise<void>((resolve) => {
        const next = (left: number) => (left === 0 ? resolve() : requestAnimationFrame(() => next(left - 1)));
        next(frames);
      }),
    count,
  );

/** Dials a lock to the end of its draw. */
async function dialOpen(bench: Bench, profile: Profile): Promise<void> {
  const hand = new KeyHand(bench, profile.graduations);
  const path = idealMotion(profile, profile.asSet ?? [], await bench.reading(), [], 5);
  for (const [i, position] of path.slice(1).entries()) await hand.turnBy(position - (path[i] ?? 0));
  await expect(bench.state).toHaveText(/^Opened/);
}

test.describe("a drag", () => {
  test("goes on outside the window and ends there without a jump", async ({ bench, page }) => {
    await bench.open();
    const start = await bench.reading();
    const place = await placeOf(bench);
    await page.mouse.move(...pointAt(place, 0));
    await page.mouse.down();
    await page.mouse.move(...pointAt(place, 15, 3));
    await page.mouse.move(-200, Math.round(place.y));
    await bench.expectReading(start + 25, PER_TURN, A_PIXEL);
    await page.mouse.move(-300, Math.round(place.y + 300));
    await page.mouse.up();
    const released = await bench.reading();
    await page.mouse.move(...pointAt(place, -20));
    await afterFrames(page);
    expect(await bench.reading()).toBe(released);
    await page.mouse.down();
    await page.mouse.move(...pointAt(place, -30));
    await page.mouse.up();
    await bench.expectReading(released - 10, PER_TURN, A_PIXEL);
  });

  test("at a low event rate, with arcs just under half a turn, counts turns right", async ({ bench, page }) => {
    await bench.open();
    const start = await bench.reading();
    const place = await placeOf(bench);
    const toFirst = 100 + ((((38 - start) % 100) + 100) % 100);
    await page.mouse.move(...pointAt(place, 0));
    await page.mouse.down();
    for (let angle = 45; angle < toFirst + 110; angle += 45) await page.mouse.move(...pointAt(place, angle));
    await page.mouse.move(...pointAt(place, toFirst + 110));
    await page.mouse.up();
    await bench.expectReading(38 + 10, PER_TURN, A_PIXEL);
    await expect(bench.steps.first()).toContainText("three of at least four arrivals");
  });

  test("faster than the page draws, more than half a turn between two frames, counts turns right", async ({
    bench,
    page,
  }) => {
    await bench.open();
    const start = await bench.reading();
    const place = await placeOf(bench);
    const toFirst = 100 + ((((38 - start) % 100) + 100) % 100);
    await page.mouse.move(...pointAt(place, 0));
    await page.mouse.down();
    const angles = Array.from({ length: Math.floor((toFirst + 110) / 5) }, (_, i) => (i + 1) * 5);
    await Promise.all([...angles, toFirst + 110].map((angle) => page.mouse.move(...pointAt(place, angle))));
    await page.mouse.up();
    await bench.expectReading(38 + 10, PER_TURN, A_PIXEL);
    await expect(bench.steps.first()).toContainText("three of at least four arrivals");
  });

  test("across the middle of the dial, where a pixel would be a quarter turn, does not throw it about", async ({
    bench,
    page,
  }) => {
    await bench.open();
    const start = await bench.reading();
    const place = await placeOf(bench);
    await page.mouse.move(...pointAt(place, 0));
    await page.mouse.down();
    await page.mouse.move(Math.round(place.x) + 3, Math.round(place.y) - 5);
    await page.mouse.move(Math.round(place.x) - 4, Math.round(place.y) + 2);
    await page.mouse.move(Math.round(place.x) + 2, Math.round(place.y) - 7);
    await page.mouse.move(...pointAt(place, 0));
    await page.mouse.up();
    await bench.expectReading(start, PER_TURN, A_PIXEL);
  });

  test("with the other mouse button turns nothing", async ({ bench, page }) => {
    await bench.open();
    const start = await bench.reading();
    const place = await placeOf(bench);
    await page.mouse.move(...pointAt(place, 0));
    await page.mouse.down({ button: "right" });
    await page.mouse.move(...pointAt(place, 20));
    await page.mouse.up({ button: "right" });
    await afterFrames(page, 3);
    expect(await bench.reading()).toBe(start);
  });
});

test.describe("on a touch screen", () => {
  test.use({ hasTouch: true });

  test("a second finger down and up while the first turns does not make the dial jump", async ({
    bench,
    page,
    context,
  }) => {
    await bench.open();
    const start = await bench.reading();
    const place = await placeOf(bench);
    const fingers = new Fingers(await context.newCDPSession(page));
    const [first, second]: [Pointer, Pointer] = [fingers.finger(1), fingers.finger(2)];
    await first.down(...pointAt(place, 0));
    await first.move(...pointAt(place, 10));
    await first.move(...pointAt(place, 20));
    await bench.expectReading(start + 20, PER_TURN, A_PIXEL);
    await second.down(...pointAt(place, 60));
    await bench.expectReading(start + 20, PER_TURN, A_PIXEL);
    await first.move(...pointAt(place, 28));
    await second.move(...pointAt(place, 85));
    await bench.expectReading(start + 28, PER_TURN, A_PIXEL);
    await second.up();
    await first.move(...pointAt(place, 40));
    await bench.expectReading(start + 40, PER_TURN, A_PIXEL);
    await first.up();
    await afterFrames(page);
    await bench.expectReading(start + 40, PER_TURN, A_PIXEL);
  });

  test("a finger that waits takes over, without a jump, when the first lets go", async ({ bench, page, context }) => {
    await bench.open();
    const start = await bench.reading();
    const place = await placeOf(bench);
    const fingers = new Fingers(await context.newCDPSession(page));
    const [first, second]: [Pointer, Pointer] = [fingers.finger(1), fingers.finger(2)];
    await first.down(...pointAt(place, 0));
    await second.down(...pointAt(place, 50));
    await first.move(...pointAt(place, 15));
    await first.up();
    await bench.expectReading(start + 15, PER_TURN, A_PIXEL);
    await second.move(...pointAt(place, 62));
    await bench.expectReading(start + 27, PER_TURN, A_PIXEL);
    await second.up();
  });

  test("turning with a finger does not scroll the page", async ({ bench, page, context }) => {
    await page.setViewportSize({ width: 390, height: 844 });
    await bench.open();
    await bench.dial.scrollIntoViewIfNeeded();
    const before = await page.evaluate(() => scrollY);
    const hand = new RoundHand(bench, new Fingers(await context.newCDPSession(page)).finger(1), PER_TURN);
    const start = await bench.reading();
    await hand.turnBy(130);
    await hand.letGo();
    await bench.expectReading(start + 30, PER_TURN, 2);
    expect(await page.evaluate(() => scrollY)).toBe(before);
  });
});

test.describe("the mouse wheel", () => {
  test("turns a dial that has the focus and does not scroll the page, which elsewhere it does", async ({
    bench,
    page,
  }) => {
    await page.setViewportSize({ width: 800, height: 700 });
    await bench.open();
    const start = await bench.reading();
    const place = await placeOf(bench);
    await bench.dial.focus();
    await page.mouse.move(place.x, place.y);
    await page.mouse.wheel(0, 200);
    await bench.expectReading(start - 6, PER_TURN);
    await page.mouse.wheel(0, -400);
    await bench.expectReading(start + 6, PER_TURN);
    await page.keyboard.down("Shift");
    await page.mouse.wheel(0, 100);
    await page.keyboard.up("Shift");
    await bench.expectReading(start + 5.7, PER_TURN);
    await page.mouse.wheel(0, 300);
    await bench.expectReading(start - 3.3, PER_TURN);
    await afterFrames(page, 30);
    expect(await page.evaluate(() => scrollY)).toBe(0);
    await page.mouse.move(place.x + place.radius + 60, place.y);
    await page.mouse.wheel(0, 200);
    await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(50);
    await bench.expectReading(start - 3.3, PER_TURN);
  });
});

test.describe("a held arrow key", () => {
  const turned = async (bench: Bench, start: number) => (((await bench.reading()) - start + 150) % PER_TURN) - 50;

  test("goes on turning, and stops when it comes up", async ({ bench, page }) => {
    await bench.open();
    const start = await bench.reading();
    await bench.dial.focus();
    await page.keyboard.down("ArrowLeft");
    await expect.poll(() => turned(bench, start)).toBeGreaterThan(4);
    await page.keyboard.up("ArrowLeft");
    const stopped = await bench.reading();
    await afterFrames(page, 30);
    expect(await bench.reading()).toBe(stopped);
  });

  test("turns faster with Shift", async ({ bench, page }) => {
    await bench.open();
    const start = await bench.reading();
    await bench.dial.focus();
    await page.keyboard.down("Shift");
    await page.keyboard.down("ArrowRight");
    // Often enough that the dial does not come round between two looks.
    await expect.poll(() => turned(bench, start), { intervals: [50] }).toBeLessThan(-25);
    await page.keyboard.up("ArrowRight");
    await page.keyboard.up("Shift");
    const stopped = await bench.reading();
    await afterFrames(page, 30);
    expect(await bench.reading()).toBe(stopped);
  });

  test("stops when the dial loses the focus", async ({ bench, page }) => {
    await bench.open();
    const start = await bench.reading();
    await bench.dial.focus();
    await page.keyboard.down("ArrowLeft");
    await expect.poll(() => turned(bench, start)).toBeGreaterThan(2);
    await page.keyboard.press("Tab");
    await expect(bench.dial).not.toBeFocused();
    const stopped = await bench.reading();
    await afterFrames(page, 30);
    expect(await bench.reading()).toBe(stopped);
    await page.keyboard.up("ArrowLeft");
  });

  test("stops when another document takes the focus", async ({ bench, page }) => {
    await bench.open();
    const start = await bench.reading();
    await bench.dial.focus();
    await page.keyboard.down("ArrowLeft");
    await expect.poll(() => turned(bench, start)).toBeGreaterThan(2);
    await page.evaluate(() => {
      const frame = document.body.appendChild(document.createElement("iframe"));
      frame.contentWindow?.focus();
    });
    await expect(page.locator("iframe")).toBeFocused();
    const stopped = await bench.reading();
    await afterFrames(page, 30);
    expect(await bench.reading()).toBe(stopped);
    await page.keyboard.up("ArrowLeft");
  });
});

test.describe("the network", () => {
  test("is used to load the page's own static files, and for nothing else", async ({ bench, page, baseURL }) => {
    const asked: string[] = [];
    page.on("request", (request) => {
      if (!request.url().startsWith("data:")) asked.push(request.url());
    });
    await bench.open();
    await page.waitForLoadState("networkidle");
    expect(asked.filter((url) => !url.startsWith(baseURL ?? "?"))).toEqual([]);
    const isOwnFile = (url: string) => /\/(assets\/[\w.-]+\.(js|css|woff2))?$/.test(new URL(url).pathname);
    expect(asked.filter((url) => !isOwnFile(url))).toEqual([]);
    const loaded = asked.length;
    expect(loaded).toBeGreaterThan(1);
    await dialOpen(bench, shippedProfile("three-wheel"));
    await page.getByRole("button", { name: "Play" }).click();
    await bench.button("Share").click();
    await page.getByRole("button", { name: "Copy", exact: true }).click();
    await page.keyboard.press("Escape");
    await bench.button("Again R").click();
    await bench.button("New numbers N").click();
    await page.getByRole("button", { name: /^Theme/ }).click();
    await page.getByRole("button", { name: /^Sound/ }).click();
    await page.getByLabel("Lock", { exact: true }).selectOption({ label: shippedProfile("dial-encoder").title });
    await page.waitForLoadState("networkidle");
    // The parts of the app itself that are fetched when they are first needed, and nothing else.
    expect(asked.filter((url) => !isOwnFile(url))).toEqual([]);
    expect(asked.slice(loaded).filter((url) => !/\.(js|css)$/.test(url))).toEqual([]);
  });

  test("is no matter of where the page lies: it works from any folder", async ({ bench, page }) => {
    const server = await serveBuilt("/some/folder/");
    try {
      await page.goto(`${server.address}#/bench?profile=two-wheel&seed=5`);
      await dialOpen(bench, shippedProfile("two-wheel"));
    } finally {
      await page.goto("about:blank");
      await server.close();
    }
  });
});

test.describe("less motion", () => {
  /** The longest transition or animation that any element would make, seconds. */
  const longest = (page: Page) =>
    page.evaluate(() => {
      const seconds = (text: string) =>
        text.split(",").map((one) => Number.parseFloat(one) * (one.trim().endsWith("ms") ? 0.001 : 1));
      return Math.max(
        ...[...document.querySelectorAll("*")].flatMap((element) => {
          const { transitionDuration, animationDuration } = getComputedStyle(element);
          return [...seconds(transitionDuration), ...seconds(animationDuration)].filter(Number.isFinite);
        }),
      );
    });

  test("is honored: nothing glides, and the lock opens as ever", async ({ bench, page }) => {
    await page.emulateMedia({ reducedMotion: "reduce" });
    await bench.open();
    await dialOpen(bench, shippedProfile("three-wheel"));
    await page.getByRole("button", { name: "Share" }).click();
    expect(await longest(page)).toBeLessThanOrEqual(0.0001);
    const running = () => page.evaluate(() => document.getAnimations().filter((a) => a.playState === "running").length);
    await expect.poll(running).toBe(0);
  });
});

/** What does not fit into the window, CSS pixels. */
const excess = (page: Page) =>
  page.evaluate(() => {
    const { scrollWidth, clientWidth, scrollHeight, clientHeight } = document.documentElement;
    return { across: scrollWidth - clientWidth, down: scrollHeight - clientHeight };
  });

test.describe("the window", () => {
  for (const profile of SHIPPED_PROFILES) {
    test(`of 1280 by 800 holds all of the ${profile.title} bench before, during and after an attempt`, async ({
      bench,
      page,
    }) => {
      await bench.open({ profile: profile.id });
      expect(await excess(page)).toEqual({ across: 0, down: 0 });
      const hand = new KeyHand(bench, profile.graduations);
      const [start = 0, first = 0, second = 0, ...rest] = idealMotion(
        profile,
        profile.asSet ?? [],
        await bench.reading(),
        [0, 4],
        5,
      );
      await hand.turnBy(first - start);
      await hand.turnBy(second - first);
      expect(await excess(page)).toEqual({ across: 0, down: 0 });
      for (const [i, position] of rest.entries()) await hand.turnBy(position - (rest[i - 1] ?? second));
      await expect(bench.state).toHaveText(/^(Did not open|Opened)/);
      expect(await excess(page)).toEqual({ across: 0, down: 0 });
    });

    test(`of 390 by 844 is wide enough for the ${profile.title} bench`, async ({ bench, page }) => {
      await page.setViewportSize({ width: 390, height: 844 });
      await bench.open({ profile: profile.id });
      expect((await excess(page)).across).toBe(0);
      await dialOpen(bench, profile);
      expect((await excess(page)).across).toBe(0);
      for (const help of ["Counts", "Silent"]) {
        await bench.button(help).click();
        expect((await excess(page)).across).toBe(0);
      }
      for (const name of [/^Combination/, "Share"]) {
        await page.getByRole("button", { name }).click();
        await expect(page.getByRole("dialog")).toBeVisible();
        expect((await excess(page)).across).toBe(0);
        await page.keyboard.press("Escape");
      }
    });
  }
});

test.describe("the dial", () => {
  for (const [width, height] of [
    [1280, 800],
    [390, 844],
  ] as const) {
    test(`stays where it is while it is turned, in a window of ${width} by ${height}`, async ({ bench, page }) => {
      await page.setViewportSize({ width, height });
      const profile = shippedProfile("three-wheel");
      await bench.open({ profile: profile.id });
      const places = new Set<string>();
      const noteWhere = async () => {
        const { x, y, radius } = await placeOf(bench);
        places.add(`${x}, ${y}, radius ${radius}: ${await bench.say.textContent()}`);
      };
      await noteWhere();
      const hand = new KeyHand(bench, profile.graduations);
      const path = idealMotion(profile, profile.asSet ?? [], await bench.reading(), [0, 3], 5);
      for (const [i, position] of path.slice(1).entries()) {
        await hand.turnBy(Math.sign(position - (path[i] ?? 0)));
        await noteWhere();
        await hand.turnBy(position - (path[i] ?? 0) - Math.sign(position - (path[i] ?? 0)));
        await noteWhere();
      }
      expect(new Set([...places].map((place) => place.split(":")[0])).size, [...places].join("\n")).toBe(1);
    });
  }
});

test.describe("on a phone", () => {
  test.use({ hasTouch: true, viewport: { width: 390, height: 844 } });

  test("a lock is dialed open with one finger, dial and advice in view together", async ({ bench, page, context }) => {
    const profile = shippedProfile("two-wheel");
    await bench.open({ profile: profile.id });
    for (const seen of [bench.dial, bench.say, bench.steps.first()]) await expect(seen).toBeInViewport({ ratio: 1 });
    const hand = new RoundHand(bench, new Fingers(await context.newCDPSession(page)).finger(1), profile.graduations);
    const path = idealMotion(profile, profile.asSet ?? [], await bench.reading(), [], 5);
    for (const [i, position] of path.slice(1).entries()) await hand.turnBy(position - (path[i] ?? 0));
    await hand.letGo();
    await expect(bench.state).toHaveText(/^Opened/);
  });

  test("the mouse hand and the finger share nothing: after a finger the mouse turns on", async ({
    bench,
    page,
    context,
  }) => {
    await bench.open();
    const start = await bench.reading();
    const place = await placeOf(bench);
    const finger = new Fingers(await context.newCDPSession(page)).finger(1);
    await finger.down(...pointAt(place, 0));
    await finger.move(...pointAt(place, 12));
    await finger.up();
    const hand = mouse(page);
    await hand.down(...pointAt(place, 30));
    await hand.move(...pointAt(place, 38));
    await hand.up();
    await bench.expectReading(start + 20, PER_TURN, 0.6);
  });
});
