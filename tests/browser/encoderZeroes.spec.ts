import type { Page } from "@playwright/test";
import type { Turn } from "../../src/lock/dial";
import { violations } from "./axe";
import { expect, test } from "./page";
import { StubPort } from "./stubPort";
import { PER_TURN, REST, wayOnto, Zeroing } from "./zeroing";

/*
 * An encoder sets the zero of a lock, and what records its stops is chosen. The browser's serial ports are a stub: no real port,
 * board or encoder was tried.
 */

const STEPS = 2400 / PER_TURN;

/** A hand at an encoder, on the page of zeroing with its ring clamped. */
class EncoderHand {
  readonly zeroing: Zeroing;
  private readonly page: Page;
  private readonly port: StubPort;

  private constructor(page: Page, port: StubPort) {
    this.page = page;
    this.port = port;
    this.zeroing = new Zeroing(page);
  }

  static async on(page: Page): Promise<EncoderHand> {
    const port = await StubPort.onBench(page);
    await page.goto("#/zeroing?seed=5");
    await page.getByRole("button", { name: "Clamp the ring" }).click();
    return new EncoderHand(page, port);
  }

  choice() {
    return this.page.getByLabel("What records a stop");
  }

  /** Comes to zero by that turn alone, from where it cannot count yet. */
  async turnOnto(turn: Turn): Promise<void> {
    const seen = await this.zeroing.seen();
    // A step of the encoder is some hundredths of a graduation: the reading says tenths.
    await this.port.turn(Math.round(wayOnto(turn, 0, seen) * STEPS));
    await this.page.waitForTimeout(REST);
  }

  press(): Promise<void> {
    return this.port.press();
  }
}

const recorded = (zeroing: Zeroing, turn: Turn, count: string) =>
  expect(zeroing.last).toContainText(new RegExp(`^${turn} stop ${count} of three recorded`, "i"));

test("an encoder sets a zero: its button, the space bar and a rest record the stops, to a verdict", async ({
  page,
}) => {
  test.setTimeout(90_000);
  const hand = await EncoderHand.on(page);
  const { zeroing } = hand;
  await expect(hand.choice()).toHaveValue("button");
  await expect(page.getByText("The index of your own dial is the index of this lock’s ring")).toBeVisible();
  expect(await violations(page)).toEqual([]);
  for (const count of ["one", "two", "three"]) {
    await hand.turnOnto("right");
    await hand.press();
    await recorded(zeroing, "right", count);
  }
  await hand.choice().selectOption("rest");
  await hand.turnOnto("left");
  await recorded(zeroing, "left", "one");
  await hand.turnOnto("left");
  await recorded(zeroing, "left", "two");
  await hand.choice().selectOption("key");
  await hand.turnOnto("left");
  // Wherever the focus is: a list takes the key for itself.
  await page.locator("body").evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.keyboard.press(" ");
  await expect(zeroing.steps.nth(2)).toContainText("3 of 3 stops");
});
