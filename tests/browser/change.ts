import { expect, type Locator, type Page } from "@playwright/test";
import { drawLength } from "../../src/dialing/fault";
import { idealMotion } from "../../src/dialing/idealMotion";
import type { Combination } from "../../src/lock/combination";
import { type Graduations, signOf } from "../../src/lock/dial";
import type { Profile } from "../../src/lock/profile";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { Bench } from "./bench";
import { type Hand, KeyHand } from "./hands";

/** The screen for changing a combination as a person finds it. */
export class ChangePage {
  readonly page: Page;
  readonly bench: Bench;
  readonly profile: Profile;
  readonly headline: Locator;
  readonly result: Locator;
  readonly refusal: Locator;
  /** What turns the dial; keys unless a test brings another. */
  hand: Hand;
  /** How near to its goal the hand comes, graduations. */
  within = 0.051;
  present: Combination = [];
  wanted: Combination = [];

  constructor(page: Page, id: string) {
    this.page = page;
    this.bench = new Bench(page);
    this.profile = shippedProfile(id);
    this.headline = page.getByTestId("change-headline");
    this.result = page.getByRole("region", { name: "Result of the change" });
    this.refusal = page.locator(".change-refusal");
    this.hand = new KeyHand(this.bench, this.profile.graduations);
  }

  /** How far the changing index stands left of the opening index. */
  get index(): Graduations {
    return this.profile.kind === "wheel-pack" ? (this.profile.changing?.index ?? 0) : 0;
  }

  async open(help = "full"): Promise<void> {
    await this.page.goto(`#/handover?view=change&seed=5&profile=${this.profile.id}&help=${help}`);
    await this.bench.dial.waitFor();
    const named = (await this.page.getByRole("button", { name: /^Change \d/ }).textContent()) ?? "";
    const [present = "", wanted = ""] = named.replace(/^Change\s*/, "").split(" to ");
    this.present = numbersOf(present);
    this.wanted = numbersOf(wanted);
  }

  /** Turns the dial and waits until it is there: a key may come late. */
  private async turnTo(position: Graduations, from: Graduations): Promise<void> {
    await this.hand.turnBy(position - from);
    await this.bench.expectReading(position, this.profile.graduations, this.within);
  }

  /** Dials numbers to an index so far left of the opening index. @returns where the dial then stands, unwrapped */
  async dialTo(numbers: Combination, index: Graduations, errors: readonly Graduations[] = []): Promise<Graduations> {
    let at = await this.bench.reading();
    for (const stop of idealMotion(this.profile, numbers, at - index, errors).slice(1, -1)) {
      const goal = Math.round((stop + index) * 10) / 10;
      await this.turnTo(goal, at);
      at = goal;
    }
    return at;
  }

  /** Dials numbers to the opening index and draws the bolt. */
  async draw(numbers: Combination): Promise<void> {
    const stop = await this.dialTo(numbers, 0);
    await this.hand.turnBy(signOf(this.profile.draw.turn) * (drawLength(this.profile, stop) + 3));
  }

  /** Throws the bolt and spins off. */
  async spinOff(): Promise<void> {
    await this.hand.turnBy(-signOf(this.profile.draw.turn) * 150);
  }

  async press(name: string): Promise<void> {
    await this.bench.button(name).press("Enter");
  }

  async expectSaid(text: string | RegExp): Promise<void> {
    await expect(this.bench.say).toHaveText(text);
  }
}

const numbersOf = (text: string) => (text.match(/\d+/g) ?? []).map(Number);
