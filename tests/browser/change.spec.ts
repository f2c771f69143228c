import { combinationText } from "../../src/handover/change/changeFault";
import { violations } from "./axe";
import { ChangePage } from "./change";
import { Fingers, KeyHand, RoundHand } from "./hands";
import { expect, test } from "./page";

test("a clean change by keyboard: key, new numbers, three proofs, then the door", async ({ page }) => {
  const change = new ChangePage(page, "three-wheel");
  await change.open();
  await change.expectSaid(/^Dial current, to the changing index: turn left, at least four arrivals at 38\.$/);
  const turnKey = change.bench.button("Turn the key");
  await expect(turnKey).toHaveAccessibleDescription("The key is not in the lock.");
  await change.press("Turn the key");
  await expect(change.refusal).toHaveText("The key is not in the lock.");
  await change.dialTo(change.present, change.index);
  await change.expectSaid("Every wheel is at the key port. Insert the change key.");
  await change.press("Insert the key");
  await change.expectSaid("Turn the key.");
  await expect(turnKey).toHaveAccessibleDescription("");
  await change.press("Turn the key");
  await change.expectSaid(/^Dial new, to the changing index/);
  await change.press("Remove the key");
  await expect(change.refusal).toHaveText("A turned key does not come out. Turn it back first.");
  await change.dialTo(change.wanted, change.index);
  await change.expectSaid("The new combination is dialed. Turn the key back.");
  await change.press("Turn the key back");
  await change.press("Remove the key");
  await expect(change.headline).toHaveText("The combination is changed. Prove it to see what it is set to.");
  for (const count of ["One", "Two", "Three"]) {
    await change.draw(change.wanted);
    await expect(change.result).toContainText(new RegExp(`${count} of three proofs`, "i"));
    await expect(page.locator(".dial-open-ring")).toHaveCount(1);
    if (count === "Three") break;
    await change.spinOff();
    await expect(page.locator(".dial-open-ring")).toHaveCount(0);
  }
  await change.expectSaid("Proved three times. You may shut the door.");
  await change.press("Shut the door");
  await expect(change.headline).toHaveText(
    `Changed and proved three times. It opens to ${combinationText(change.wanted, change.profile)}.`,
  );
  await expect(change.result.locator("li")).toHaveCount(0);
});

test("a key turned with a wheel away from the port spoils the pack, and the page says how", async ({ page }) => {
  const change = new ChangePage(page, "two-wheel");
  await change.open();
  await change.dialTo(change.present, change.index, [0, -3]);
  await change.press("Insert the key");
  await change.expectSaid("Do not turn the key. Remove it.");
  await expect(change.bench.detail).toHaveText("wheel 2 is 3.0 graduations away from the key port");
  await change.press("Turn the key");
  await expect(change.headline).toHaveText("The wheel pack is spoiled: it opens to no combination.");
  await expect(change.result).toContainText(
    "You turned the key while wheel 2 was 3.0 graduations away from the key port.",
  );
});

test("a number set 0.8 off is a lock that opens 0.8 off", async ({ page }) => {
  const change = new ChangePage(page, "two-wheel");
  await change.open("counts");
  await change.dialTo(change.present, change.index);
  for (const act of ["Insert the key", "Turn the key"]) await change.press(act);
  await change.dialTo(change.wanted, change.index, [0, 0.8]);
  for (const act of ["Turn the key back", "Remove the key"]) await change.press(act);
  // Nothing is given away before it is tried.
  await expect(change.result).not.toContainText("off");
  await change.draw(change.wanted);
  const second = change.wanted[1] ?? 0;
  await expect(change.result).toContainText(
    `Your second number, ${second}, was set 0.8 graduations off. The lock opens at ${second + 0.8}.`,
  );
});

test("an encoder lock changes nothing when the two dialings differ", { tag: "@long" }, async ({ page }) => {
  const change = new ChangePage(page, "dial-encoder");
  await change.open();
  await change.draw(change.present);
  await change.expectSaid("Open. Press the change button inside the door.");
  await change.press("Press the change button");
  await change.hand.turnBy(40);
  await change.hand.turnBy(-30);
  await change.draw(change.wanted);
  await change.expectSaid(/^Dial new again/);
  await change.draw(change.wanted.map((number, k) => (k === 1 ? number + 4 : number)));
  await change.expectSaid(/^The two entries differed and nothing is changed\./);
  await expect(change.result).toContainText("the current combination still opens it");
  for (let k = 0; k < 2; k++) await change.draw(change.wanted);
  await change.expectSaid(/^Prove it at the opening index/);
  await change.draw(change.wanted);
  await expect(change.headline).toHaveText(
    `It opens to ${combinationText(change.wanted, change.profile)}. Prove it two more times before the door is shut.`,
  );
});

test("a bolt held back cannot be spun off, and its door does not lock", async ({ page }) => {
  const change = new ChangePage(page, "three-wheel");
  const hand = new KeyHand(change.bench, 100);
  const told = page.getByTestId("holdback-told");
  await page.goto("#/handover?view=holdback&seed=5");
  await expect(page.locator(".dial-open-ring")).toHaveCount(1);
  await change.press("Set the holdback");
  await expect(told).toHaveText("The holdback is set: the bolt is held back.");
  const before = await change.bench.reading();
  await hand.turnBy(100);
  await expect(told).toHaveText("The dial is blocked. While the bolt is held back, you cannot spin the lock off.");
  await change.bench.expectReading(before + 0.5, 100);
  await change.press("Shut the door and pull");
  await expect(told).toHaveText("The door opens when you pull it: a bolt that is held back locks nothing.");
  await change.press("Release the holdback");
  await hand.turnBy(500);
  await expect(told).toHaveText("Spun off: the lock is secured.");
  await expect(page.locator(".dial-open-ring")).toHaveCount(0);
  await expect(change.bench.say).toHaveText("Done. Held back, the door does not lock. Spun off, it locks.");
});

test.describe("on a phone", () => {
  test.use({ hasTouch: true, viewport: { width: 390, height: 844 } });

  test("a change by touch, and its first proof", { tag: "@long" }, async ({ page, context }) => {
    const change = new ChangePage(page, "two-wheel");
    await change.open("counts");
    const finger = new Fingers(await context.newCDPSession(page)).finger(1);
    const round = new RoundHand(change.bench, finger, change.profile.graduations);
    change.within = 0.4;
    change.hand = {
      turnBy: async (by) => {
        await change.bench.dial.scrollIntoViewIfNeeded();
        await round.turnBy(by);
      },
    };
    const tap = async (name: string) => {
      const button = change.bench.button(name);
      await button.scrollIntoViewIfNeeded();
      // A tap may fall into the scrolling that it asked for; a finger then taps again.
      await expect(async () => {
        await button.tap();
        await expect(button).toHaveAttribute("aria-disabled", "true", { timeout: 300 });
      }).toPass();
    };
    await change.dialTo(change.present, change.index);
    await round.letGo();
    for (const act of ["Insert the key", "Turn the key"]) await tap(act);
    await change.dialTo(change.wanted, change.index);
    await round.letGo();
    for (const act of ["Turn the key back", "Remove the key"]) await tap(act);
    await change.draw(change.wanted);
    await expect(change.headline).toHaveText(/^It opens to \d/);
    await expect(change.result).toContainText("one of three proofs");
  });
});

const MOMENTS = [
  { name: "a change", view: "change", press: [] },
  { name: "a spoiled pack", view: "change", press: ["Insert the key", "Turn the key"] },
  { name: "a bolt held back", view: "holdback", press: ["Set the holdback"] },
];
const LOOKS = [
  { width: 1280, height: 800, colorScheme: "light" },
  { width: 390, height: 844, colorScheme: "dark" },
] as const;

for (const { name, view, press } of MOMENTS) {
  test(`axe finds nothing wrong, light or dark, on a desk or a phone, and all fits: ${name}`, async ({ page }) => {
    await page.goto(`#/handover?view=${view}&seed=5`);
    await page.getByRole("slider", { name: "Dial" }).waitFor();
    for (const act of press) await page.getByRole("button", { name: act, exact: true }).click();
    for (const { colorScheme, ...window } of LOOKS) {
      await page.setViewportSize(window);
      await page.emulateMedia({ colorScheme });
      expect.soft(await violations(page), `${colorScheme}, ${window.width}`).toEqual([]);
      const across = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect.soft(across, `nothing to scroll across at ${window.width}`).toBeLessThanOrEqual(0);
    }
  });
}
