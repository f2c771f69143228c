import type { Page } from "@playwright/test";
import { LOOKS, look, violations } from "../axe";
import { expect, test } from "../page";
import { Zeroing, ZeroingHand } from "../zeroing";

async function inSeries(zeroing: Zeroing): Promise<ZeroingHand> {
  await zeroing.open();
  const hand = new ZeroingHand(zeroing);
  await hand.clamp();
  await hand.take("right", 0.3);
  return hand;
}

async function toResult(zeroing: Zeroing): Promise<ZeroingHand> {
  const hand = await inSeries(zeroing);
  await hand.takeAll("right", [-0.2, 0.2]);
  await hand.takeAll("left", [0.3, -0.2, 0.2]);
  await expect(zeroing.headline).toHaveText("Set, but not shown to be good yet.");
  return hand;
}

/** Moments in which a person meets the screen, and how one comes there. */
const MOMENTS: readonly { readonly name: string; readonly reach: (zeroing: Zeroing) => Promise<unknown> }[] = [
  { name: "the ring loose", reach: (zeroing) => zeroing.open() },
  { name: "in a series", reach: inSeries },
  {
    name: "after a refusal",
    reach: async (zeroing) => {
      const hand = await inSeries(zeroing);
      await hand.miss("came-back", "right");
      await expect(zeroing.last).toContainText("Not counted.");
    },
  },
  { name: "the result", reach: toResult },
  {
    name: "not set",
    reach: async (zeroing) => {
      const hand = await inSeries(zeroing);
      await hand.takeAll("right", [-1.2, 1.2, -1.2, 1.2, -1.2, 1.2, -1.2]);
      await expect(zeroing.headline).toHaveText(/^Not set/);
    },
  },
  {
    name: "the proof",
    reach: async (zeroing) => {
      const hand = await toResult(zeroing);
      await zeroing.page.getByRole("tab", { name: "Prove it" }).click();
      await hand.keys.turnBy(450);
      await hand.keys.turnBy(-250);
      await expect(zeroing.page.locator(".zeroing-table tbody tr")).toHaveCount(1);
    },
  },
  {
    name: "the play",
    reach: async (zeroing) => {
      await zeroing.open();
      await zeroing.page.getByRole("tab", { name: "Find the play" }).click();
      await new ZeroingHand(zeroing).turnOnto("right", 0);
      await zeroing.dial.press(" ");
    },
  },
  {
    name: "silent, in a series",
    reach: async (zeroing) => {
      await zeroing.open({ help: "silent" });
      const hand = new ZeroingHand(zeroing);
      await hand.clamp();
      await hand.take("right", 0);
    },
  },
];

/** Everything to press that is less than 24 pixels one way. */
const tooSmall = (page: Page) =>
  page.locator("button, select, input, textarea, a, [role=slider], [role=tab]").evaluateAll((elements) =>
    elements
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ element, box }) => element.checkVisibility() && (box.width < 24 || box.height < 24))
      .map(
        ({ element, box }) =>
          `${element.tagName} ${element.textContent || element.getAttribute("aria-label") || element.id}: ${box.width} by ${box.height}`,
      ),
  );

const overflow = (page: Page) =>
  page.evaluate(() => {
    const { scrollWidth, scrollHeight, clientWidth, clientHeight } = document.documentElement;
    return { across: scrollWidth - clientWidth, down: scrollHeight - clientHeight };
  });

for (const { name, reach } of MOMENTS) {
  test(`axe finds nothing wrong, light or dark, on a desk or a phone, and all fits: ${name}`, async ({ page }) => {
    await page.clock.install();
    await reach(new Zeroing(page));
    for (const one of LOOKS) {
      await look(page, one);
      expect.soft(await violations(page), one.name).toEqual([]);
      expect.soft((await overflow(page)).across, `nothing to scroll across, ${one.name}`).toBeLessThanOrEqual(0);
      expect.soft(await tooSmall(page), `everything to press is 24 pixels or more each way, ${one.name}`).toEqual([]);
    }
  });
}

test("in a series the page does not scroll on a desk, not even after a refusal", async ({ page }) => {
  await page.clock.install();
  const zeroing = new Zeroing(page);
  const hand = await inSeries(zeroing);
  expect((await overflow(page)).down).toBeLessThanOrEqual(0);
  await hand.miss("came-back", "right");
  await expect(zeroing.last).toContainText("Not counted.");
  expect((await overflow(page)).down).toBeLessThanOrEqual(0);
  await expect(zeroing.readingButton).toBeInViewport({ ratio: 1 });
});
