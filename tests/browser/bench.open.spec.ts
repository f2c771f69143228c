import type { Page } from "@playwright/test";
import { idealMotion } from "../../src/dialing/idealMotion";
import { signOf } from "../../src/lock/dial";
import type { Profile } from "../../src/lock/profile";
import { SHIPPED_PROFILES, shippedProfile } from "../../src/lock/shippedProfiles";
import { spinOffRule } from "../../src/lock/spinOffRule";
import type { Bench } from "./bench";
import { ButtonHand, Fingers, type Hand, KeyHand, mouse, pen, RoundHand } from "./hands";
import { expect, test } from "./page";

/** How far the hand pushes beyond the positive stop, graduations. */
const PUSH = 10;
/** What a hand on whole pixels may be off, graduations: half a pixel where it took hold and half where it is. */
const A_PIXEL = 0.3;

/** Kinds of pointers that came down on the page, as the page was told. */
async function notePointers(page: Page): Promise<() => Promise<string[]>> {
  await page.addInitScript(() => {
    const types: string[] = [];
    Object.assign(globalThis, { pointerTypesSeen: types });
    addEventListener("pointerdown", ({ pointerType }) => types.push(pointerType), { capture: true });
  });
  return () => page.evaluate(() => (globalThis as { pointerTypesSeen?: string[] }).pointerTypesSeen ?? []);
}

/** Where the dial stands with the bolt back, unwrapped or not. */
function stopOf({ kind, draw }: Profile, lastNumber: number): number {
  return (kind === "wheel-pack" ? draw.engageAt : lastNumber) + signOf(draw.turn) * draw.travel;
}

interface Journey {
  readonly bench: Bench;
  readonly profile: Profile;
  readonly hand: Hand;
  readonly within: number;
}

/** Dials the combination, tries to push through the stop, throws the bolt and spins the lock off. */
async function openAndSecure({ bench, profile, hand, within }: Journey): Promise<void> {
  const { asSet: combination = [], draw, graduations } = profile;
  const stop = stopOf(profile, combination.at(-1) ?? 0);
  const onward = signOf(draw.turn);
  const path = idealMotion(profile, combination, await bench.reading(), [], PUSH);
  for (const [i, position] of path.slice(1).entries()) await hand.turnBy(position - (path[i] ?? 0));

  await expect(bench.state).toHaveText(/^Opened in \d+\.\d s\.$/);
  await expect(bench.steps.last()).toContainText("bolt back");
  await expect(bench.result).toContainText(/Opened in \d+\.\d s\./);
  await expect(bench.fault).toBeEmpty();
  await bench.expectReading(stop, graduations, within);

  await hand.turnBy(onward * PUSH);
  await bench.expectReading(stop, graduations, within);
  await expect(bench.steps.last()).toContainText("bolt back");

  const thrown = draw.travel + PUSH;
  await hand.turnBy(-onward * thrown);
  await expect(bench.steps.last()).toContainText("bolt thrown");
  await expect(bench.state).toHaveText(/Not secure yet|The bolt is thrown/);
  const clearing = spinOffRule(profile).turns;
  await hand.turnBy(-onward * (clearing * graduations - thrown + PUSH));
  await expect(bench.state).toHaveText("Secured.");
  await expect(bench.steps.last()).toContainText("spun off");
}

for (const profile of SHIPPED_PROFILES) {
  const tag = ["three-wheel", "dial-encoder"].includes(profile.id) ? [] : ["@long"];
  test(`${profile.title}: dialed with the keyboard, held by the stop, thrown and spun off`, { tag }, async ({
    bench,
  }) => {
    await bench.open({ profile: profile.id });
    await openAndSecure({ bench, profile, hand: new KeyHand(bench, profile.graduations), within: 0 });
  });
}

/** Every kind of hand on one lock of each kind; the others differ by their profile, which the keyboard shows as well. */
const WITH_EVERY_HAND = [
  { id: "three-wheel", tag: [] },
  { id: "dial-encoder", tag: ["@long"] },
];

for (const { id, tag } of WITH_EVERY_HAND) {
  const profile = shippedProfile(id);
  test.describe(`${profile.title}: dialed, held by the stop, thrown and spun off`, { tag }, () => {
    test("with a mouse that goes round the dial, farther out over the last few graduations", async ({
      bench,
      page,
    }) => {
      const seen = await notePointers(page);
      await bench.open({ profile: profile.id });
      const hand = new RoundHand(bench, mouse(page), profile.graduations);
      await openAndSecure({ bench, profile, hand, within: A_PIXEL });
      await hand.letGo();
      expect(await seen()).toEqual(["mouse"]);
    });

    test("with a pen", { tag: "@long" }, async ({ bench, page, context }) => {
      const seen = await notePointers(page);
      await bench.open({ profile: profile.id });
      const hand = new RoundHand(bench, pen(await context.newCDPSession(page)), profile.graduations);
      await openAndSecure({ bench, profile, hand, within: A_PIXEL });
      await hand.letGo();
      expect(await seen()).toEqual(["pen"]);
    });

    test("with the turn buttons alone", { tag: "@long" }, async ({ bench }) => {
      await bench.open({ profile: profile.id });
      await openAndSecure({ bench, profile, hand: new ButtonHand(bench, profile.graduations), within: 0 });
    });

    test.describe("on a touch screen", () => {
      test.use({ hasTouch: true });

      test("with a finger", { tag: "@long" }, async ({ bench, page, context }) => {
        const seen = await notePointers(page);
        await bench.open({ profile: profile.id });
        const fingers = new Fingers(await context.newCDPSession(page));
        const hand = new RoundHand(bench, fingers.finger(1), profile.graduations);
        await openAndSecure({ bench, profile, hand, within: A_PIXEL });
        await hand.letGo();
        expect(await seen()).toEqual(["touch"]);
      });
    });
  });
}

test("a bench that writes its own address is made once", async ({ page, bench }) => {
  // Each bench that is made has a clock of its own, which keeps what is under way.
  await page.addInitScript(() => {
    const { setInterval: begin } = window;
    window.setInterval = ((act: () => void, every?: number, ...rest: unknown[]) => {
      const { dataset } = document.documentElement;
      if (every === 1000) dataset.clocks = `${dataset.clocks ?? ""}.`;
      return begin(act, every, ...rest);
    }) as typeof window.setInterval;
  });
  await page.goto("#/bench");
  await expect(page).toHaveURL(/profile=three-wheel/);
  await expect(page.getByRole("region", { name: "Turn chart" })).toBeVisible();
  await expect(page.locator("html")).toHaveAttribute("data-clocks", ".");
  // Asked for again, it begins anew.
  const before = await bench.reading();
  await bench.dial.focus();
  await page.keyboard.press("ArrowRight");
  expect(await bench.reading()).not.toBe(before);
  await page.getByRole("link", { name: "Bench", exact: true }).click();
  await expect(page).toHaveURL(/profile=three-wheel/);
  await expect.poll(() => bench.reading()).toBe(before);
});
