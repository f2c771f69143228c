import { expect, type Locator, type Page } from "@playwright/test";
import type { Help } from "../../src/dialing/advice";
import { type Graduations, reading, wrap } from "../../src/lock/dial";

/** What a bench address asks for. */
export interface BenchAsked {
  readonly profile?: string;
  /** Numbers with dashes between. */
  readonly combination?: string;
  readonly help?: Help;
  /** Fixes where the dial and the wheels start. */
  readonly seed?: number;
  readonly measure?: "on";
}

/** The bench as a person finds it: what can be read off the page, by role and name. */
export class Bench {
  readonly page: Page;
  readonly dial: Locator;
  /** What a screen reader is told at a change of state. */
  readonly state: Locator;
  /** What a screen reader is told at once: the last fault. */
  readonly fault: Locator;
  /** The sentence above the dial, and the one below it. */
  readonly say: Locator;
  readonly detail: Locator;
  /** Every number with its direction and arrivals, then the draw. */
  readonly steps: Locator;
  readonly result: Locator;
  readonly chart: Locator;
  readonly cutaway: Locator;

  constructor(page: Page) {
    this.page = page;
    this.dial = page.getByRole("slider", { name: "Dial" });
    this.state = page.getByTestId("state");
    this.fault = page.locator("[data-testid=state] + [role=alert]");
    this.say = page.locator(".advice-say");
    this.detail = page.locator(".advice-detail");
    this.steps = page.getByRole("list", { name: "Combination and turns" }).getByRole("listitem");
    this.result = page.getByRole("region", { name: "What happened" });
    this.chart = page.getByRole("region", { name: "Turn chart" });
    this.cutaway = page.getByRole("region", { name: "Cutaway" });
  }

  /** Goes to a bench; a page that is on one already stays and changes its lock, as with a link. */
  async open(asked: BenchAsked = {}): Promise<void> {
    const query = new URLSearchParams({ seed: "5", ...textOf(asked) });
    await this.page.goto(`#/bench?${query}`);
    await this.dial.waitFor();
  }

  /** Reading of the dial, to a tenth. */
  async reading(): Promise<Graduations> {
    return Number(await this.dial.getAttribute("aria-valuenow"));
  }

  /** Waits until the dial stands at a position, wrapped or not. */
  async expectReading(position: Graduations, perTurn: number, within = 0.051): Promise<void> {
    await expect
      .poll(async () => Math.abs(wrap((await this.reading()) - reading(position, perTurn), perTurn)), {
        message: `the dial stands at ${reading(position, perTurn)}`,
      })
      .toBeLessThanOrEqual(within);
  }

  button(name: string): Locator {
    return this.page.getByRole("button", { name, exact: true });
  }
}

const textOf = (asked: BenchAsked): Record<string, string> =>
  Object.fromEntries(Object.entries(asked).map(([key, value]) => [key, String(value)]));
