import { readFile } from "node:fs/promises";
import type { Locator } from "@playwright/test";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { checkHandoverRecord } from "../../src/records/handover/checkHandoverRecord";
import { profileRules } from "../../src/zeroing/zeroingRules";
import { violations } from "./axe";
import { doorWith, Handover, numbersIn, PREPARED, PROVED } from "./handover";
import { KeyHand } from "./hands";
import { expect, test } from "./page";
import { byFinger, byKey } from "./press";
import { Zeroing, ZeroingHand } from "./zeroing";

const ENCODER = shippedProfile("dial-encoder");
if (ENCODER.kind !== "dial-encoder") throw new Error("it has no zero to set");
const ENCODER_RULES = profileRules(ENCODER);

const TWO_WHEEL = shippedProfile("two-wheel");
/** Turns enough to spin the lock off, graduations, away from the draw. */
const SPIN = TWO_WHEEL.draw.turn === "right" ? 450 : -450;
/** Where something stands in the window, CSS pixels. */
const placeOf = (one: Locator) =>
  one.evaluate((element) => {
    const { top, bottom } = element.getBoundingClientRect();
    return { top, bottom };
  });
const CLEAN = "Handed over with every proof and without a fault.";

test("a clean handover by keyboard, every dialing by hand", async ({ page }) => {
  test.slow();
  const door = new Handover(page, byKey);
  const hand = new KeyHand(door.bench, TWO_WHEEL.graduations);
  if (TWO_WHEEL.kind !== "wheel-pack" || TWO_WHEEL.changing === undefined) throw new Error("it takes a change key");
  const { index } = TWO_WHEEL.changing;
  const opens = async () => {
    await hand.turnBy(SPIN);
    await door.dial(hand, TWO_WHEEL, await door.numbers());
    await door.expectTold("You dialed it: the bolt came back.");
    await expect(page.locator(".dial-open-ring")).toHaveCount(1);
  };
  await door.open(doorWith({ isHandsOff: false }));
  await door.does("Measure the height", "Align the ring");
  await new Zeroing(page).straighten();
  await door.does("Clamp the ring", "Back to the door");
  await expect(door.state("ring")).toHaveText("aligned");
  await opens();
  await hand.turnBy(SPIN);
  await door.change("61-28");
  const change = page.getByRole("region", { name: "Change by hand" });
  const shipped = await door.numbers();
  await door.dial(hand, TWO_WHEEL, shipped, index, false);
  await door.does("Insert the key", "Turn the key");
  await expect(change).toContainText("the wheels are free");
  await door.dial(hand, TWO_WHEEL, [61, 28], index, false);
  await door.does("Turn the key back", "Remove the key", "Done");
  await expect(door.combination).toHaveText("61-28");
  for (let k = 0; k < 3; k++) await opens();
  await door.does("Let the second person open it", "Set the holdback", "Release the holdback");
  await door.does("Test the inside release", "Show an observer the release and let them in");
  await hand.turnBy(SPIN);
  await door.expectTold("You spun the lock off.");
  await door.does("Shut the door");
  await opens();
  await door.does("Pull the door open", "Let the person inside out");
  await hand.turnBy(SPIN);
  await door.writeRecord();
  await door.expectTold("You wrote the record.");
  await door.does("Sign the door off");
  await expect(door.verdict).toHaveText(CLEAN);
});

test("an encoder lock zeroed and changed by keyboard, and a reload in the midst of either loses nothing", {
  tag: "@long",
}, async ({ page }) => {
  test.slow();
  await page.clock.install();
  const door = new Handover(page, byKey);
  const zeroing = new Zeroing(page);
  const hand = new ZeroingHand(zeroing);
  const [first, second] = ENCODER_RULES.order;
  await door.open(doorWith({ profile: ENCODER, isHandsOff: false }));
  await door.does("Measure the height", "Align the ring");
  await expect(page.getByRole("region", { name: "Ring and zero" })).toBeFocused();
  await zeroing.straighten();
  await door.does("Clamp the ring");
  await hand.takeAll(first, [0, 0.1]);
  await page.reload();
  await expect(zeroing.panel).toContainText(`${first === "right" ? "Right" : "Left"} side: 2 stops recorded`);
  await hand.take(first, 0);
  await hand.takeAll(second, [0, 0.1, 0]);
  await expect(door.state("zero")).toHaveText("both directions");
  await door.does("Back to the door");
  await expect(door.bench.dial).toBeFocused();

  await door.change();
  const change = page.getByRole("region", { name: "Change by hand" });
  await expect(change).toBeFocused();
  const wanted = numbersIn(await change.getByRole("heading").textContent());
  await door.dial(hand.keys, ENCODER, await door.numbers());
  await expect(change).toContainText("It opened.");
  await door.does("Press the change button");
  await door.dial(hand.keys, ENCODER, wanted);
  await expect(change).toContainText("First entry accepted.");
  await page.reload();
  await expect(change).toContainText("First entry accepted.");
  await door.dial(hand.keys, ENCODER, wanted);
  await expect(change).toContainText("Both entries agree.");
  await door.does("Done");
  await expect(door.bench.dial).toBeFocused();
  await expect(door.combination).toHaveText(wanted.join("-"));
  await expect(door.state("combination")).toHaveText("changed");
});

test.describe("on a touch screen", () => {
  test.use({ hasTouch: true, viewport: { width: 390, height: 844 } });

  test("a clean handover by finger, a simulated hand dialing", { tag: "@long" }, async ({ page }) => {
    const door = new Handover(page, byFinger);
    await door.open(doorWith({ slips: false }));
    await door.does(...PREPARED);
    await door.change();
    await door.does(...PROVED);
    await expect(door.state("outside")).toHaveText("opened");
    const numbers = (await door.numbers()).join("-");
    expect(numbers).toMatch(/^\d+-\d+$/);
    await door.writeRecord();
    await door.does("Sign the door off");
    await expect(door.debrief).toContainText("A simulated hand did the dialing.");
    await expect(door.verdict).toHaveText(CLEAN);
    const record = door.debrief.getByLabel("The record");
    for (const part of [
      "proved three times; second person",
      "by a simulated hand",
      "5 CFR 1312.25",
      "not a certificate",
    ])
      await expect(record).toContainText(part);
    await expect(record).not.toContainText(numbers);
    const downloading = page.waitForEvent("download");
    await door.does("Save the record");
    const saved = JSON.parse(await readFile(await (await downloading).path(), "utf8"));
    expect(checkHandoverRecord(saved).problems).toEqual([]);
    await page.goto("#/logbook?view=jobs");
    await expect(page.getByRole("row", { name: /Handover/ })).toContainText(/Right\s*nothing missed/);
  });
});

test("on a phone dial, act and what follows are in one view, and nothing moves the dial", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  const door = new Handover(page);
  await door.open(doorWith({ isHandsOff: false }));
  await door.bench.dial.evaluate((dial) => dial.scrollIntoView());
  const act = page.getByRole("button", { name: "It does not open" });
  await page.getByRole("button", { name: "Lock", exact: true }).click();
  const before = await placeOf(door.bench.dial);
  await act.click();
  await door.expectTold("You dialed a lock that is not ready");
  expect(await placeOf(door.bench.dial)).toEqual(before);
  const told = await placeOf(door.told);
  const strip = await placeOf(page.locator(".run-strip"));
  expect(before.top).toBeGreaterThanOrEqual(strip.bottom);
  expect(told.top).toBeGreaterThanOrEqual(before.bottom);
  expect((await placeOf(act)).top).toBeGreaterThanOrEqual(told.bottom);
  expect((await placeOf(act)).bottom).toBeLessThanOrEqual(844);
});

test("on a phone door and states stay in view, and nothing covers what one reads or presses", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  const door = new Handover(page);
  await door.open(doorWith({}));
  const strip = page.locator(".run-strip");
  await expect(strip).toHaveText("Door open · bolt thrownnobody inside · proved 0 of 3");
  await door.does("Align the ring", "Shut the door");
  await expect(strip).toHaveText("Door shut · bolt thrownnobody inside · proved 0 of 3");
  const steps = await door.told.evaluate((told) => Math.ceil((told.getBoundingClientRect().bottom + scrollY) / 150));
  for (let step = 2; step < steps; step++) {
    await page.evaluate((top) => scrollTo({ top, behavior: "instant" }), step * 150);
    await expect(strip).toBeInViewport({ ratio: 1 });
    const covered = await page.evaluate(() => {
      const edge = document.querySelector(".run-strip")?.getBoundingClientRect().bottom ?? 0;
      const parts = [...document.querySelectorAll(".run-next, .run-told, .run-acts button, .run-hand button")];
      return parts.flatMap((part) => {
        const { left, top, bottom, width, height } = part.getBoundingClientRect();
        if (top < edge || bottom > innerHeight) return [];
        const seen = document.elementFromPoint(left + width / 2, top + height / 2);
        return seen !== null && part.contains(seen) ? [] : [part.textContent];
      });
    });
    expect(covered, `scrolled by ${step * 150}`).toEqual([]);
  }
});

test.describe("bad handovers and what follows", () => {
  test("shut on a combination that was never proved: locked out, and undone in the debrief", async ({ page }) => {
    const door = new Handover(page);
    await door.open(doorWith({ slips: true }));
    await door.change();
    await door.expectTold("The numbers you set are not the numbers that are written down.");
    await door.does("Spin off", "Shut the door");
    await door.expectTold("You are locked out");
    await door.does("Dial the combination");
    await door.expectTold("it did not open");
    await door.expectTold("You are still locked out.");
    await door.does("Knock: have it opened from inside");
    await door.expectTold("Nobody is inside.");
    await door.does("Have it opened by force");
    await door.expectTold("On a real door that takes hours");
    await expect(door.told).not.toContainText("still locked out");
    await door.does("Look back");
    await expect(door.debrief).toBeFocused();
    await page.getByRole("button", { name: /^Undo from here.*You shut the door/ }).click();
    await expect(door.state("door")).toHaveText("open");
    await page.keyboard.press("Tab");
    await expect(door.bench.dial).toBeFocused();
    await door.does("Look back");
    await expect(door.debrief.getByText("Undone in the debrief.")).toHaveCount(3);
    await expect(door.debrief).toContainText("You are locked out");
  });

  test("somebody inside and no way out that was checked: shut in, and the release does not move", async ({ page }) => {
    const door = new Handover(page);
    await door.open(doorWith({ isBlocked: true }));
    await door.does("Measure the height", "Align the ring", "Dial the combination");
    await door.does("Show an observer the release and let them in", "Shut the door");
    await expect(door.state("door")).toHaveText("shut");
    await door.does("Spin off");
    await door.expectTold("Someone is shut inside");
    await door.does("Knock: have it opened from inside");
    await door.expectTold("did not move");
    await door.does("Dial the combination", "Pull the door open");
    await expect(door.state("door")).toHaveText("open");
  });

  test("the holdback left on: the dial does not turn, the door does not lock, the signature does not stand", async ({
    page,
  }) => {
    const door = new Handover(page);
    await door.open(doorWith({}));
    await door.does(...PREPARED, "Set the holdback", "Spin off");
    await door.expectTold("the holdback holds the bolt back");
    await door.does("Shut the door");
    await door.expectTold("the door is not locked");
    await door.does("Pull the door open");
    await door.expectTold("You pulled the door open.");
    await door.does("Sign the door off");
    await door.expectTold("You tried to hand over a door with the holdback set.");
    await expect(door.debrief).toHaveCount(0);
  });

  test("signed with nothing proved: it does not stand, what is missing is told, and a reload loses nothing", async ({
    page,
  }) => {
    const door = new Handover(page);
    await door.open(doorWith({}));
    await door.does(...PREPARED);
    await door.change();
    await door.does("Sign the door off");
    await door.expectTold("The signature was not accepted.");
    const numbers = await door.combination.textContent();
    await page.reload();
    await expect(door.combination).toHaveText(numbers ?? "");
    await expect(door.state("combination")).toHaveText("changed");
    await door.does("Look back");
    await expect(page.getByTestId("debrief-missing").getByRole("listitem")).toContainText([
      "three times in a row",
      "second person",
      "inside release",
      "someone inside",
      "from outside",
      "holdback",
      "spun off",
      "record",
    ]);
  });

  test("another door is the one that a reload goes on with, and an address asks for its own", async ({ page }) => {
    const door = new Handover(page);
    const first = doorWith({});
    await door.open(first);
    await door.does("Another door", "Measure the height");
    await door.expectTold("You measured");
    const address = page.url();
    await page.reload();
    expect(page.url()).toBe(address);
    await expect(door.state("mounting")).not.toHaveText("not measured");
    await door.open(first);
    await expect(page.getByText(`door number ${first.seed}`)).toBeVisible();
    await expect(door.state("mounting")).toHaveText("not measured");
  });

  test("a run started again stays put away after a reload, and work that cannot be taken up again is told", async ({
    page,
  }) => {
    const door = new Handover(page);
    await door.open(doorWith({}));
    await door.does("Measure the height", "Start again");
    await expect(page.getByRole("dialog", { name: "Discard this handover?" })).toBeVisible();
    await page.getByRole("button", { name: "Keep it" }).click();
    await expect(door.state("mounting")).not.toHaveText("not measured");
    await door.does("Start again", "Discard and start");
    await expect(door.state("mounting")).toHaveText("not measured");
    await page.reload();
    await expect(door.told).toContainText("The lock is new");
    await expect(door.state("mounting")).toHaveText("not measured");
    const address = page.url();
    await page.goto("#/handover?view=holdback");
    await page.getByRole("button", { name: "Shut the door and pull" }).waitFor();
    // A change to one number on a lock of two: of the right shape, and yet none that can be.
    await page.evaluate(() => {
      const key = "gatefall.handover-run";
      const kept = JSON.parse(localStorage.getItem(key) ?? "{}");
      kept.underWay.change = { wanted: [1], hand: 0, lock: { dial: 0 }, deeds: [] };
      localStorage.setItem(key, JSON.stringify(kept));
    });
    await page.goto(address);
    await door.expectTold("The work you had under way cannot be read. A copy is kept in this browser");
    await door.does("Measure the height");
    await expect(door.state("mounting")).not.toHaveText("not measured");
    expect(await page.evaluate(() => localStorage.getItem("gatefall.handover-run.unread"))).toContain('"wanted":[1]');
  });

  test("an encoder lock zeroed from one side only does not open as it should", async ({ page }) => {
    const door = new Handover(page);
    await door.open(doorWith({ profile: shippedProfile("dial-encoder") }));
    await door.does("Measure the height", "Align the ring", "Set the zero turning right");
    await expect(door.state("zero")).toHaveText("turning right only");
    await door.does("Dial the combination");
    await door.expectTold("it did not open");
    await door.expectTold("the zero is not set in both directions");
    await door.does("Set the zero turning left", "Dial the combination");
    await door.expectTold("the bolt came back");
  });

  test("the combination in the record: the form refuses it and says why", async ({ page }) => {
    const door = new Handover(page);
    await door.open(doorWith({}));
    await door.writeRecord({ Remarks: `left ${TWO_WHEEL.asSet?.[0]} then ${TWO_WHEEL.asSet?.[1]}` });
    await expect(page.getByRole("alert")).toContainText(
      'All numbers of the combination are near each other in "Remarks".',
    );
    await page.getByRole("dialog").getByRole("button", { name: "Close" }).click();
    await door.expectTold("You wrote the combination into the record.");
    await expect(door.state("record")).toHaveText("not written");
  });
});

test("axe finds nothing wrong, light on a desk, dark on a phone, nor in the form", { tag: "@long" }, async ({
  page,
}) => {
  const door = new Handover(page);
  await door.open(doorWith({ slips: true }));
  await door.change();
  await door.does("Let someone in, shown nothing", "Shut the door", "Look back");
  await expect(door.debrief).toBeVisible();
  const looks = [
    { colorScheme: "light", viewport: { width: 1280, height: 800 } },
    { colorScheme: "dark", viewport: { width: 390, height: 844 } },
  ] as const;
  for (const { colorScheme, viewport } of looks) {
    await page.setViewportSize(viewport);
    await page.emulateMedia({ colorScheme });
    expect.soft(await violations(page)).toEqual([]);
    const across = await page.locator("main").evaluate((element) => element.scrollWidth - element.clientWidth);
    expect.soft(across, "nothing in the page to scroll across").toBeLessThanOrEqual(0);
  }
  await door.does("Write the record");
  expect.soft(await violations(page)).toEqual([]);
});
