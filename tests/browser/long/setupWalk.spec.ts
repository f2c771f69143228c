import { join } from "node:path";
import type { Locator, Page } from "@playwright/test";
import { cameraPlaying, filmInto } from "../../support/film/fakeCamera";
import { expect, test } from "../page";
import { StubPort } from "../stubPort";

/*
 * What the setup asks of a person: keys, things to do with the dial, and seconds in which nothing is to be done but wait for the app.
 * Counted with fake devices, by keys alone; the seconds are told in the report, for a busy machine is slow, not wrong. No person, real
 * port, board or camera was timed.
 */

const FILM = join(import.meta.dirname, "../../../test-results/films/three-checks.y4m");

test.use({ launchOptions: cameraPlaying(FILM), permissions: ["camera"] });

/** Steps of the encoder in a graduation of a dial of 100. */
const STEPS = 24;

const task = (page: Page) => page.locator("[aria-labelledby=setup-task]");

/** A person at the keyboard, who counts. */
class Walker {
  keys = 0;
  turns = 0;
  private waited_ms = 0;
  private readonly waits: string[] = [];
  private readonly began = performance.now();
  private readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  /** Goes to a button by Tab and presses it. */
  async press(name: string): Promise<void> {
    const button = this.page.getByRole("button", { name, exact: true });
    await expect(button).toBeEnabled();
    for (let tab = 0; tab < 40 && !(await button.evaluate((one) => one === document.activeElement)); tab++) {
      await this.page.keyboard.press("Tab");
      this.keys += 1;
    }
    await expect(button).toBeFocused();
    await this.page.keyboard.press("Enter");
    this.keys += 1;
  }

  /** Turns the dial once. */
  async turn(turn: () => Promise<void>): Promise<void> {
    this.turns += 1;
    await turn();
  }

  /** Nothing can be done until this is in sight. */
  async waitFor(what: string, shown: Locator): Promise<void> {
    const from = performance.now();
    await expect(shown).toBeVisible({ timeout: 60_000 });
    const waited_ms = performance.now() - from;
    this.waited_ms += waited_ms;
    this.waits.push(`${what} ${(waited_ms / 1000).toFixed(1)} s`);
  }

  /** Tells what was counted. */
  tell(device: string): void {
    const all_s = ((performance.now() - this.began) / 1000).toFixed(0);
    const waited_s = (this.waited_ms / 1000).toFixed(1);
    const text = `${device}: ${this.keys} keys, ${this.turns} turns of the dial, ${waited_s} s of waiting in ${all_s} s (${this.waits.join(", ")})`;
    test.info().annotations.push({ type: "setup", description: text });
    process.stdout.write(`${text}\n`);
  }
}

test("an encoder is set up by some twenty keys and four turns", async ({ page }) => {
  const port = await StubPort.on(page);
  await page.goto("#/dial");
  const walker = new Walker(page);
  const shown = (text: string | RegExp) => task(page).getByText(text).first();
  await walker.press("Choose: Encoder on a serial line");
  await walker.press("Connect");
  await port.start();
  await walker.waitFor("it answers", page.getByRole("button", { name: "Go on to zero" }).and(page.locator(":enabled")));
  await walker.press("Go on to zero");
  await walker.press("This is 0");
  await walker.turn(() => port.turn(12 * STEPS));
  await walker.waitFor("direction", shown(/The numbers went up\./));
  await walker.press("Go on to the checks");
  for (const [by, says] of [
    [13, "On 25: agrees"],
    [-50, "On 75: agrees"],
    [25, "On 0: agrees"],
  ] as const) {
    await walker.turn(() => port.turn(by * STEPS));
    await walker.waitFor("a stop", shown(says));
  }
  await walker.press("Finish the setup");
  await walker.waitFor("done", page.getByRole("heading", { name: "Your dial is set up" }));
  walker.tell("encoder");
  expect([walker.turns, walker.keys <= 30]).toEqual([4, true]);
});

test("a printed dial is set up by some twenty keys, its stops taken by themselves", async ({ page }) => {
  test.setTimeout(180_000);
  // From 0 as the three checks ask for: 25 by the left, 75 by the right, 0 by the left, from where it goes round again.
  const legs = [
    { by: 25, speed: 50, restMs: 3000 },
    { by: -50, speed: 50, restMs: 3000 },
    { by: 25, speed: 50, restMs: 500 },
  ];
  filmInto(FILM, { restMs: 3500, legs }, 17);
  await page.goto("#/dial");
  const walker = new Walker(page);
  await walker.press("Choose: Printed dial and camera");
  await walker.press("Connect");
  await walker.waitFor("the picture", page.locator("main video"));
  await walker.waitFor("the dial is found", page.getByText(/Your dial shows: \d/));
  await walker.press("Go on to zero");
  // From here on the film's hand turns, 12 s round: what is waited for is mostly the hand.
  await walker.turn(() => expect(task(page)).toContainText("The numbers went up.", { timeout: 40_000 }));
  await walker.press("Go on to the checks");
  for (const _ of [25, 75, 0]) walker.turns += 1;
  await expect(task(page)).toContainText("All three stops agree. Your dial is ready.", { timeout: 60_000 });
  await walker.press("Finish the setup");
  await walker.waitFor("done", page.getByRole("heading", { name: "Your dial is set up" }));
  walker.tell("printed dial");
  expect([walker.turns, walker.keys <= 30]).toEqual([4, true]);
});
