import type { Page } from "@playwright/test";
import { idealMotion } from "../../src/dialing/idealMotion";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import type { Bench } from "./bench";
import { KeyHand } from "./hands";
import { expect, test } from "./page";

const NUMBERS = [38, 71, 26];
/** How far the hand pushes beyond the positive stop, graduations. */
const PUSH = 5;

/** Dials 38-71-26 on the three-wheel lock; stop errors may spoil it. `between` happens after every stop. */
async function dial(
  bench: Bench,
  stopErrors: readonly number[] = [],
  between: () => Promise<void> = async () => {},
): Promise<void> {
  const hand = new KeyHand(bench, 100);
  // What is turned after a refusal belongs to the next attempt: a spoiled one is not pushed on.
  const push = stopErrors.some((error) => Math.abs(error) > 1) ? 0 : PUSH;
  const path = idealMotion(shippedProfile("three-wheel"), NUMBERS, await bench.reading(), stopErrors, push);
  for (const [i, position] of path.slice(1).entries()) {
    await hand.turnBy(position - (path[i] ?? 0));
    await between();
  }
  await expect(bench.state).toHaveText(/^(Opened|Did not open)/);
}

const sheet = (page: Page) => page.getByRole("dialog");
const sharedText = (page: Page) => sheet(page).getByRole("textbox", { name: "This attempt in the replay format" });
const loadText = (page: Page) => sheet(page).getByRole("textbox", { name: "A recorded attempt to load" });
const timeSlider = (page: Page) => page.getByRole("slider", { name: "Time in the replay" });

const jsonFile = (name: string, value: unknown) => ({
  name,
  mimeType: "application/json",
  buffer: Buffer.from(typeof value === "string" ? value : JSON.stringify(value)),
});

/** A lock file of the user's own: two wheels, ten to a turn less than usual. */
const OWN = {
  id: "gate-ninety",
  title: "Gate with ninety marks",
  kind: "wheel-pack",
  graduations: 90,
  procedure: [
    { turn: "right", arrivals: 3, rule: "at-least" },
    { turn: "left", arrivals: 2, rule: "exactly" },
  ],
  draw: { turn: "right", engageAt: 5, travel: 15 },
  wheelPack: { freePlay: [90, 90], gateTolerance: [1.5, 1.5] },
  asSet: [61, 33],
};

/** Moves the replay to its end by key, and waits for the slider to be there. */
async function toTheEnd(page: Page): Promise<void> {
  await timeSlider(page).focus();
  await page.keyboard.press("End");
}

test.describe("an attempt is shared", () => {
  test("as text, which another page loads and replays to the same end", async ({ bench, page, context }) => {
    await context.grantPermissions(["clipboard-read", "clipboard-write"]);
    await bench.open({ profile: "three-wheel", seed: 5 });
    await dial(bench, [0.4, 0, -0.6]);
    const end = await bench.reading();
    await bench.button("Share").click();
    await sheet(page).getByRole("button", { name: "Copy", exact: true }).click();
    await expect(sheet(page).getByRole("status")).toHaveText("Copied.");
    const text = await page.evaluate(() => navigator.clipboard.readText());
    expect(text).toBe(await sharedText(page).inputValue());
    const recorded = JSON.parse(text) as Record<string, unknown>;
    expect(recorded).toMatchObject({ profile: "three-wheel", combination: NUMBERS });

    await bench.open({ profile: "dial-encoder", seed: 9 });
    await page.reload();
    await bench.button("Share").click();
    await loadText(page).fill(text);
    await sheet(page).getByRole("button", { name: "Load and replay" }).click();
    await expect(sheet(page)).toHaveCount(0);
    await expect(bench.say).toHaveText(/^Replay/);
    await toTheEnd(page);
    await bench.expectReading(end, 100);
    await expect(bench.cutaway).toContainText(/bolt drawn back/);
    await expect(page.getByLabel("Lock", { exact: true })).toHaveValue("0");
  });

  test("as a file, which loads and replays to the same end", async ({ bench, page }) => {
    await bench.open({ profile: "three-wheel", seed: 5 });
    await dial(bench, [0, 3]);
    const end = await bench.reading();
    await bench.button("Share").click();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      sheet(page).getByRole("link", { name: "Save as a file" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("attempt.jsonl");
    const path = await download.path();

    await bench.open({ seed: 9 });
    await page.reload();
    await bench.button("Share").click();
    await sheet(page).getByLabel("Load a file").setInputFiles(path);
    await expect(sheet(page)).toHaveCount(0);
    await toTheEnd(page);
    await bench.expectReading(end, 100);
    await expect(bench.cutaway).toContainText(/bolt thrown/);
  });

  test("only once there is one: before the first motion the sheet says so", async ({ bench, page }) => {
    await bench.open();
    await bench.button("Share").click();
    await expect(sheet(page)).toContainText("You have not dialed yet.");
    await expect(sharedText(page)).toHaveCount(0);
  });

  const REFUSED_TEXTS = [
    { why: "that is no JSON", text: "thirty-eight left", told: /^Not loaded: this is not one whole JSON object/ },
    { why: "without positions", text: '{"profile":"three-wheel","combination":[38,71,26]}', told: /positions must be/ },
    {
      why: "for a lock that is not known",
      text: '{"profile":"safe-9","combination":[1,2,3],"positions":[0,5]}',
      told: /profile "safe-9" is not known; there are three-wheel, /,
    },
    {
      why: "with a number off the dial",
      text: '{"profile":"three-wheel","combination":[38,71,126],"positions":[0,5]}',
      told: /combination\[2\] \(126\) is off this dial/,
    },
    {
      why: "with a slack that does not fit",
      text: '{"profile":"three-wheel","combination":[38,71,26],"start":{"dial":0,"slack":[0,0]},"positions":[0,5]}',
      told: /start\.slack has 2 entries/,
    },
    {
      why: "with times that fall",
      text: '{"profile":"three-wheel","combination":[38,71,26],"positions":[0,5],"times_ms":[9,3]}',
      told: /times_ms\[1\] \(3\) is earlier/,
    },
  ];

  test("but text that is none is refused in a sentence, and stays to be mended", async ({ bench, page }) => {
    await bench.open();
    const before = await bench.reading();
    for (const { why, text, told } of REFUSED_TEXTS) {
      await test.step(`text ${why}`, async () => {
        await bench.button("Share").click();
        await loadText(page).fill(text);
        await sheet(page).getByRole("button", { name: "Load and replay" }).click();
        await expect(sheet(page).getByRole("alert")).toHaveText(told);
        await expect(loadText(page)).toHaveValue(text);
        await page.keyboard.press("Escape");
        await expect(sheet(page)).toHaveCount(0);
        await expect(bench.say).toHaveText(/^Start: turn left/);
        expect(await bench.reading()).toBe(before);
      });
    }
  });
});

test.describe("a lock file of one's own", () => {
  const file = (page: Page) => page.getByLabel("Load a lock profile file");

  test("loads, is chosen, and is dialed open", async ({ bench, page }) => {
    await bench.open();
    await file(page).setInputFiles(jsonFile("mine.json", OWN));
    await expect(page.getByLabel("Lock", { exact: true }).locator("option:checked")).toHaveText(OWN.title);
    await expect(page.getByRole("button", { name: /^Combination/ })).toContainText("61–33");
    await expect(bench.say).toHaveText("Start: turn right, at least three arrivals at 61.");
    await expect(bench.dial).toHaveAttribute("aria-valuemax", "90");
    const start = await bench.reading();
    const hand = new KeyHand(bench, 90);
    const toFirst = ((((start - 61) % 90) + 90) % 90 || 90) + 2 * 90;
    await hand.turnBy(-toFirst);
    await hand.turnBy(62 + 90);
    await hand.turnBy(-(28 + 15 + 5));
    await expect(bench.state).toHaveText(/^Opened/);
    await bench.expectReading(5 - 15, 90);
  });

  test("is shared whole, so that it replays where it is not known", async ({ bench, page }) => {
    await bench.open();
    await file(page).setInputFiles(jsonFile("mine.json", OWN));
    await expect(bench.say).toHaveText("Start: turn right, at least three arrivals at 61.");
    await new KeyHand(bench, 90).turnBy(-95);
    const end = await bench.reading();
    await bench.button("Share").click();
    const text = await sharedText(page).inputValue();
    expect(JSON.parse(text)).toMatchObject({ profile: { id: OWN.id, graduations: 90 }, combination: OWN.asSet });
    await page.reload();
    await bench.button("Share").click();
    await loadText(page).fill(text);
    await sheet(page).getByRole("button", { name: "Load and replay" }).click();
    await expect(bench.say).toHaveText(/^Replay/);
    await toTheEnd(page);
    await bench.expectReading(end, 90);
  });

  const REFUSED_FILES = [
    {
      why: "a field missing",
      value: { ...OWN, draw: undefined },
      told: /draw must be such as .*\(it is missing\)/,
    },
    {
      why: "a play of the wrong length",
      value: { ...OWN, wheelPack: { ...OWN.wheelPack, freePlay: [90] } },
      told: /wheelPack\.freePlay must have 2 entries/,
    },
    {
      why: "a rule that does not exist",
      value: { ...OWN, procedure: [{ ...OWN.procedure[0], rule: "at-most" }, OWN.procedure[1]] },
      told: /procedure\[0\]\.rule must be "at-least" or "exactly"/,
    },
    { why: "no JSON in it", value: "a lock", told: /^mine\.json is not loaded: / },
  ];

  test("that is none is refused in a sentence that says why, and the lock stays as it was", async ({ bench, page }) => {
    await bench.open({ profile: "four-wheel" });
    const before = await bench.reading();
    for (const { why, value, told } of REFUSED_FILES) {
      await test.step(`a file with ${why}`, async () => {
        await file(page).setInputFiles(jsonFile("mine.json", value));
        await expect(page.getByRole("alert").filter({ hasText: "mine.json" })).toHaveText(told);
        await expect(page.getByLabel("Lock", { exact: true }).locator("option:checked")).toHaveText(/^Four-wheel/);
        await expect(bench.say).toHaveText("Start: turn right, at least five arrivals at 62.");
        expect(await bench.reading()).toBe(before);
      });
    }
  });
});

test.describe("a combination of one's own", () => {
  const numberField = (page: Page, name: string) => sheet(page).getByRole("textbox", { name: `${name} number` });
  const take = (page: Page) => sheet(page).getByRole("button", { name: "Set the lock" });
  const openSheet = async (page: Page) => {
    await page.getByRole("button", { name: /^Combination/ }).click();
    await sheet(page).getByRole("radio", { name: "My own" }).check();
  };

  test("is set on the lock and told on the plate", async ({ bench, page }) => {
    await bench.open();
    await openSheet(page);
    for (const [name, number] of [
      ["first", "12"],
      ["second", "55"],
      ["third", "37.5"],
    ] as const)
      await numberField(page, name).fill(number);
    await expect(sheet(page)).toContainText("This combination follows every rule for this lock.");
    await take(page).click();
    await expect(page.getByRole("button", { name: /^Combination/ })).toContainText("12–55–37.5 your own");
    await expect(bench.steps.nth(2)).toContainText("37.5");
    await expect(bench.say).toContainText("at 12.");
  });

  const REFUSED_NUMBERS = [
    { why: "left out", number: "", told: "Enter the second number." },
    { why: "that is no number", number: "abc", told: "Enter the second number." },
    {
      why: "off the dial",
      number: "101",
      told: "The second number (101) is off this dial, whose numbers go from 0 to 99.",
    },
    {
      why: "below zero",
      number: "-3",
      told: "The second number (-3) is off this dial, whose numbers go from 0 to 99.",
    },
    { why: "that is the mark 0", number: "100", told: "The second number (100) is the mark 0 of this dial; write 0." },
  ];

  test("with a number that is none is not set, and a sentence says why", async ({ bench, page }) => {
    await bench.open();
    await openSheet(page);
    for (const { why, number, told } of REFUSED_NUMBERS) {
      await test.step(`a number ${why}`, async () => {
        await numberField(page, "second").fill(number);
        await expect(sheet(page).getByRole("alert")).toHaveText(told);
        await expect(take(page)).toBeDisabled();
      });
    }
  });

  test("that breaks rules is told them with their source, and may be practiced all the same", async ({
    bench,
    page,
  }) => {
    await bench.open();
    await openSheet(page);
    for (const [name, number] of [
      ["first", "10"],
      ["second", "12"],
      ["third", "16"],
    ] as const)
      await numberField(page, name).fill(number);
    const told = sheet(page).getByRole("listitem");
    await expect(told.filter({ hasText: "10 and 12 are 2 graduations apart" })).toContainText(
      "MIL-HDBK-1013/8 (1989), section 2",
    );
    await expect(told.filter({ hasText: "the last number, 16, is in 0 to 20" })).toContainText("item e.2");
    await expect(told.filter({ hasText: "straight up" })).toContainText("item e.3");
    await expect(told.filter({ hasText: "all numbers are even" })).toContainText("item e.4");
    await expect(told.filter({ hasText: "10 is a multiple of ten" })).toContainText("item e.1");
    await take(page).click();
    await expect(bench.say).toHaveText("Start: turn left, at least four arrivals at 10.");
  });

  test("of the wrong length in the address is passed over, and a sentence says so", async ({ bench, page }) => {
    await bench.open({ profile: "two-wheel", combination: "38-71-26" });
    await expect(page.getByRole("alert").filter({ hasText: "address" })).toHaveText(
      'The address asks for the combination "38-71-26". It has 3 numbers, but two-wheel takes 2. The bench uses the combination as set.',
    );
    await expect(bench.say).toHaveText("Start: turn right, at least three arrivals at 74.");
  });

  test("drawn by the rules changes with every New numbers", async ({ bench, page }) => {
    await bench.open();
    const combination = page.getByRole("button", { name: /^Combination/ });
    await bench.button("New numbers N").click();
    await expect(combination).toContainText("drawn");
    const first = await combination.textContent();
    await bench.dial.focus();
    await page.keyboard.press("n");
    await expect(combination).not.toHaveText(first ?? "");
    await expect(combination).toContainText("drawn");
    await openSheet(page);
    await expect(sheet(page)).toContainText("This combination follows every rule for this lock.");
  });
});

test.describe("beginning again", () => {
  test("by R keeps the numbers and spins the lock off", async ({ bench, page }) => {
    await bench.open();
    await new KeyHand(bench, 100).turnBy(250);
    await expect(bench.state).toHaveText(/^Keep turning/);
    await page.keyboard.press("r");
    await expect(bench.state).toHaveText("Start: turn left, at least four arrivals at 38.");
    await expect(bench.chart).toContainText("Turn the dial. Its path is drawn here.");
    await expect(page.getByRole("button", { name: /^Combination/ })).toContainText("38–71–26 as set");
  });

  test("by the button Again does the same", async ({ bench }) => {
    await bench.open();
    await new KeyHand(bench, 100).turnBy(250);
    await bench.button("Again R").click();
    await expect(bench.state).toHaveText("Start: turn left, at least four arrivals at 38.");
  });

  test("by turning on after a failure needs no key", { tag: "@long" }, async ({ bench }) => {
    await bench.open();
    await dial(bench, [0, 3]);
    await expect(bench.state).toHaveText(/^Did not open/);
    const hand = new KeyHand(bench, 100);
    await hand.turnBy(20);
    await expect(bench.state).toHaveText(/^Did not open/);
    await hand.turnBy(10);
    await expect(bench.state).toHaveText(/^Keep turning left/);
  });

  test("does not happen while one types an R", async ({ bench, page }) => {
    await bench.open();
    await new KeyHand(bench, 100).turnBy(250);
    await bench.button("Share").click();
    await loadText(page).fill("");
    await loadText(page).press("r");
    await loadText(page).press("n");
    await page.keyboard.press("Escape");
    await expect(bench.state).toHaveText(/^Keep turning/);
  });
});

test.describe("the turn chart", () => {
  test("shows the ghost that is chosen, and remembers the choice", async ({ bench, page }) => {
    await bench.open();
    const ghost = page.getByRole("combobox", { name: "Compare on the turn chart" });
    const drawn = bench.chart.locator("svg .turn-chart-ghost");
    await dial(bench);
    const without = await drawn.count();
    await ghost.selectOption("Compare with: perfect dialing");
    await expect.poll(() => drawn.count()).toBeGreaterThan(without);
    await ghost.selectOption("Compare with: your best");
    await expect.poll(() => drawn.count()).toBeGreaterThan(without);
    await page.reload();
    await expect(ghost).toHaveValue("best");
  });

  test("plays the attempt, pauses it, and is scrubbed; the dial and the cutaway follow", async ({ bench, page }) => {
    await page.clock.install();
    await bench.open();
    const start = await bench.reading();
    await dial(bench, [], () => page.clock.runFor(4000));
    const end = await bench.reading();
    await page.getByRole("button", { name: "Play" }).click();
    await expect(bench.say).toHaveText(/^Replay/);
    const time = () => timeSlider(page).evaluate((input) => (input as HTMLInputElement).valueAsNumber);
    await expect.poll(time).toBeGreaterThan(0);
    await page.getByRole("button", { name: "Pause" }).click();
    // A frame that was on its way may still come.
    await page.clock.runFor(100);
    const paused = { time: await time(), reading: await bench.reading() };
    expect(paused.time).toBeLessThan(16_000);
    await page.clock.runFor(2000);
    expect({ time: await time(), reading: await bench.reading() }).toEqual(paused);

    await toTheEnd(page);
    await bench.expectReading(end, 100);
    await expect(bench.cutaway).toContainText(/bolt drawn back/);
    await expect(bench.steps.last()).toContainText("bolt back");
    await page.keyboard.press("Home");
    await bench.expectReading(start, 100, 1.1);
    await expect(bench.cutaway).toContainText(/bolt thrown/);
    await page.getByRole("button", { name: "Play" }).click();
    await page.clock.runFor(20_000);
    await expect(page.getByRole("button", { name: "Play" })).toBeVisible();
    await bench.expectReading(end, 100);
  });

  test("gives the dial back as soon as it is turned", async ({ bench, page }) => {
    await bench.open();
    await dial(bench);
    const end = await bench.reading();
    await timeSlider(page).focus();
    await page.keyboard.press("PageUp");
    await expect(bench.say).toHaveText(/^Replay/);
    await new KeyHand(bench, 100).turnBy(3);
    await expect(bench.say).not.toHaveText(/^Replay/);
    await bench.expectReading(end + 3, 100);
  });
});
