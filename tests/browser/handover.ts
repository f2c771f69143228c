import { expect, type Locator, type Page } from "@playwright/test";
import { changeTo } from "../../src/app/exercises/handover/run/session/changeWork";
import type { RunSetup } from "../../src/app/exercises/handover/run/session/doorWork";
import { HandoverSession } from "../../src/app/exercises/handover/run/session/handoverSession";
import { ACT_GROUPS } from "../../src/app/exercises/handover/run/session/runActs";
import { idealMotion } from "../../src/dialing/idealMotion";
import type { Combination } from "../../src/lock/combination";
import { type Graduations, reading } from "../../src/lock/dial";
import type { Profile } from "../../src/lock/profile";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { Bench } from "./bench";
import type { Hand } from "./hands";
import { byPointer, type Press } from "./press";

/** The handover run as a person finds it: what can be read off the page, by role and name. */
export class Handover {
  readonly page: Page;
  readonly bench: Bench;
  readonly told: Locator;
  readonly verdict: Locator;
  readonly combination: Locator;
  readonly debrief: Locator;
  private readonly press: Press;

  constructor(page: Page, press: Press = byPointer) {
    this.page = page;
    this.press = press;
    this.bench = new Bench(page);
    this.told = page.getByTestId("run-told");
    this.verdict = page.getByTestId("debrief-verdict");
    this.combination = page.getByTestId("run-combination");
    this.debrief = page.getByRole("region", { name: "Debrief" });
  }

  async open({ profile, seed, isHandsOff }: RunSetup): Promise<void> {
    await this.page.goto(`#/handover?view=run&profile=${profile.id}&seed=${seed}${isHandsOff ? "&hands=off" : ""}`);
    await this.told.waitFor();
  }

  /** Presses a button by its name. Where only one group of acts is shown, its group is chosen first. */
  async does(...names: readonly string[]): Promise<void> {
    for (const name of names) {
      const button = this.page.getByRole("button", { name, exact: true });
      const title = groupOf(name);
      if (title !== undefined) await this.showGroup(title);
      await this.press(button);
    }
  }

  private async showGroup(title: string): Promise<void> {
    const group = this.page.getByRole("button", { name: title, exact: true });
    if (await group.isVisible()) await this.press(group);
  }

  /** A part of the situation, as the list tells it. */
  state(region: string): Locator {
    return this.page.getByTestId(`state-${region}`);
  }

  /** Takes the numbers that the form offers, or others. */
  async change(numbers?: string): Promise<void> {
    await this.does("Change the combination");
    const field = this.page.getByLabel("New combination");
    if (numbers !== undefined) await field.fill(numbers);
    await this.does("Set it");
  }

  async writeRecord(more: Readonly<Record<string, string>> = {}): Promise<void> {
    await this.does("Write the record");
    const form = this.page.getByRole("dialog", { name: "The record" });
    for (const [label, value] of Object.entries({ ...RECORD, ...more })) await form.getByLabel(label).fill(value);
    await this.press(form.getByRole("button", { name: "Write the record" }));
  }

  /** Numbers as they are shown. */
  async numbers(): Promise<Combination> {
    return numbersIn(await this.combination.textContent());
  }

  /**
   * Dials by hand.
   *
   * @param index - where the numbers are dialed to, graduations left of the opening index
   * @param hasDraw - whether the hand draws as well
   */
  async dial(
    hand: Hand,
    profile: Profile,
    numbers: Combination,
    index: Graduations = 0,
    hasDraw = true,
  ): Promise<void> {
    const { graduations } = profile;
    const targets = numbers.map((number) => reading(number + index, graduations));
    const path = idealMotion(profile, targets, await this.bench.reading(), [], 2);
    const stops = hasDraw ? path : path.slice(0, -1);
    for (const [k, stop] of stops.slice(1).entries()) await hand.turnBy(stop - (stops[k] ?? stop));
  }

  async expectTold(words: string | RegExp): Promise<void> {
    await expect(this.told).toContainText(words);
  }
}

/** What is written into the record. */
export const RECORD: Readonly<Record<string, string>> = {
  Technician: "P. Underbell",
  "Taken over by": "D. Mallow",
  "Holders informed": "D. Mallow",
};

/** Numbers in a text, as the face shows them. */
export const numbersIn = (text: string | null): Combination => (text?.match(/\d+/g) ?? []).map(Number);

/** Acts with a form of their own, which the table of acts does not hold. */
const FORM_GROUPS: Readonly<Record<string, string>> = {
  "Change the combination": "Lock",
  "Write the record": "Paper",
  "Sign the door off": "Paper",
  "Look back": "Paper",
};

/** The group that an act stands in, or undefined where it stands in none. */
export const groupOf = (name: string) =>
  FORM_GROUPS[name] ?? ACT_GROUPS.find(({ acts }) => acts.some(({ label }) => label === name))?.title;

const LOCK = shippedProfile("two-wheel");

/** A door whose height is in range and whose release is free, or not. */
export interface WantedDoor {
  readonly profile?: Profile;
  readonly isBlocked?: boolean;
  readonly isHandsOff?: boolean;
  /** Whether the simulated hand slips when it changes the combination at once. */
  readonly slips?: boolean;
}

/** Whether a run at once changed by a simulated hand would be set off. */
function slipsAtOnce(setup: RunSetup): boolean {
  const session = new HandoverSession(setup);
  changeTo(session, session.drawOwn(), 0);
  return session.run.situation.combination === "ownOff";
}

/** The first seed whose door is as wanted: found by making it, so that no test hangs on a number. */
export function doorWith(wanted: WantedDoor): RunSetup {
  const { profile = LOCK, isBlocked = false, isHandsOff = true, slips } = wanted;
  for (let seed = 1; seed < 500; seed++) {
    const setup = { profile, seed, isHandsOff };
    const { scene } = new HandoverSession(setup).recorded;
    const isFit = scene.isReleaseBlocked === isBlocked && scene.height_in <= 48;
    if (isFit && (slips === undefined || slipsAtOnce(setup) === slips)) return setup;
  }
  throw new Error("no seed gives such a door");
}

/** Every act of a clean handover with hands off, but for change, record and signature. */
export const PREPARED = ["Measure the height", "Align the ring", "Dial the combination"] as const;
export const PROVED = [
  ...["Dial the combination", "Dial the combination", "Dial the combination"],
  ...["Let the second person open it", "Set the holdback", "Release the holdback"],
  ...["Test the inside release", "Show an observer the release and let them in", "Spin off", "Shut the door"],
  ...["Dial the combination", "Pull the door open", "Let the person inside out", "Spin off"],
] as const;
