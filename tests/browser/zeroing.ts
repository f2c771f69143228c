import { expect, type Locator, type Page } from "@playwright/test";
import { spokenReading } from "../../src/app/hand/dial/spokenReading";
import { readingText } from "../../src/dialing/words";
import { type Graduations, opposite, reading, signOf, type Turn, wrap } from "../../src/lock/dial";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import type { Refusal } from "../../src/zeroing/approach";
import { Bench } from "./bench";
import { type Hand, KeyHand } from "./hands";

/** The lock whose zero is set. */
export const LOCK = shippedProfile("dial-encoder");
export const PER_TURN = LOCK.graduations;

/** Longer than a dial must rest before a reading, milliseconds. */
export const REST = 450;

/** Every reading as it is spoken, to its position. */
const SPOKEN = new Map(
  Array.from({ length: PER_TURN * 10 }, (_, tenths) => [spokenReading(readingText(tenths / 10, LOCK)), tenths / 10]),
);

/** A size in words or digits. */
function sizeOf(text: string): number {
  const size = SPOKEN.get(text) ?? Number(text);
  if (Number.isNaN(size)) throw new Error(`"${text}" is no size`);
  return LOCK.numbersIncrease === "left" || !SPOKEN.has(text) ? size : reading(-size, PER_TURN);
}

/** "0.2 left of zero", "zero point two left of zero", "on zero" as graduations, left positive. */
export function placeOfWords(words: string): Graduations {
  if (/\bon zero\b/.test(words)) return 0;
  const [, size = "", side] = /(\S+(?: point \S+)?) (left|right) of zero/.exec(words) ?? [];
  return (side === "left" ? 1 : -1) * sizeOf(size);
}

/** What the index reads, of the words that the dial speaks. */
export function seenIn(spoken: string | null): Graduations {
  const words = (spoken ?? "").split(",")[0] ?? "";
  return / zero$/.test(words) ? placeOfWords(words) : (SPOKEN.get(words) ?? Number.NaN);
}

/** How far the index stands off the line on the case, of the words that the ring's slider speaks. */
export function indexErrorIn(spoken: string | null): Graduations {
  const [, size = "", side] = /index is ([\d.]+) graduations (left|right)/.exec(spoken ?? "") ?? [];
  return (side === "left" ? 1 : -1) * Number(size);
}

/** How far to turn one way, a third of a turn or more, until the index reads a deviation from zero. */
export function wayOnto(turn: Turn, deviation: Graduations, seen: Graduations): Graduations {
  const sign = signOf(turn);
  const way = reading(sign * (deviation - seen), PER_TURN);
  return sign * (way < PER_TURN / 3 ? way + PER_TURN : way);
}

/** The zeroing screen as a person finds it: what can be read off the page, by role and name. */
export class Zeroing {
  readonly page: Page;
  readonly bench: Bench;
  readonly dial: Locator;
  /** The sentence above the dial, and what came of the last reading. */
  readonly state: Locator;
  readonly last: Locator;
  /** The plates of the calibration: ring, two sides, zero. */
  readonly steps: Locator;
  readonly panel: Locator;
  readonly headline: Locator;
  readonly ring: Locator;
  readonly readingButton: Locator;

  constructor(page: Page) {
    this.page = page;
    this.bench = new Bench(page);
    this.dial = this.bench.dial;
    this.state = page.getByTestId("zeroing-state");
    this.last = page.getByTestId("zeroing-last");
    this.steps = page.getByRole("list", { name: "Steps of the calibration" }).getByRole("listitem");
    this.panel = page.getByRole("region", { name: "Set zero" });
    this.headline = page.locator(".zeroing-headline");
    this.ring = page.getByRole("slider", { name: "Ring" });
    this.readingButton = page.getByRole("button", { name: /^Record this stop/ });
  }

  async open(asked: { readonly seed?: number; readonly help?: "silent" } = {}): Promise<void> {
    const { seed = 5, help } = asked;
    await this.page.goto(`#/zeroing?seed=${seed}${help === undefined ? "" : `&help=${help}`}`);
    await this.dial.waitFor();
  }

  /** What the index as drawn reads, to a tenth, as the dial speaks it; shown or not. */
  async seen(): Promise<Graduations> {
    return seenIn(await this.dial.getAttribute("aria-valuetext"));
  }

  /** How far the mark 0 is from the index, graduations, left positive. */
  async deviation(): Promise<Graduations> {
    return wrap(await this.seen(), PER_TURN);
  }

  /** How far the index stands off the line on the case, as the ring's slider speaks it. */
  async indexError(): Promise<Graduations> {
    return indexErrorIn(await this.ring.getAttribute("aria-valuetext"));
  }

  /** Turns one way, a third of a turn or more, until the index reads a deviation from zero. */
  async turnOnto(hand: Hand, turn: Turn, deviation: Graduations): Promise<void> {
    await hand.turnBy(wayOnto(turn, deviation, await this.seen()));
  }

  /** Brings the ring true by the keys of its slider. */
  async straighten(): Promise<void> {
    await this.ring.focus();
    const steps = Math.round((await this.indexError()) / 0.05);
    for (let i = 0; i < Math.abs(steps); i++) await this.ring.press(steps > 0 ? "ArrowRight" : "ArrowLeft");
    expect(Math.abs(await this.indexError())).toBeLessThanOrEqual(0.1);
  }

  button(name: string): Locator {
    return this.bench.button(name);
  }
}

/** A hand on the keyboard that waits by the page's own clock; install that first. */
export class ZeroingHand {
  readonly zeroing: Zeroing;
  readonly keys: KeyHand;

  constructor(zeroing: Zeroing) {
    this.zeroing = zeroing;
    this.keys = new KeyHand(zeroing.bench, PER_TURN);
  }

  /** Brings the ring true and clamps it. */
  async clamp(): Promise<void> {
    await this.zeroing.straighten();
    await this.zeroing.button("Clamp the ring").press("Enter");
    await expect(this.zeroing.steps.first()).toContainText("clamped");
  }

  async turnOnto(turn: Turn, deviation: Graduations): Promise<void> {
    await this.zeroing.turnOnto(this.keys, turn, deviation);
  }

  /** Turns one way until the cam's mark is on its line. */
  async turnOntoMark(side: Turn): Promise<void> {
    const { detail } = this.zeroing.bench;
    const onward = signOf(side);
    const words = async () => (await detail.textContent()) ?? "";
    await this.turnOnto(side, -5 * onward);
    // The mark comes into sight at some graduation.
    for (let i = 0; i < 8 && (await words()).includes("out of sight"); i++) await this.keys.turnBy(onward);
    const [, size = "0"] = /mark is ([\d.]+) /.exec(await words()) ?? [];
    await this.keys.turnBy(onward * Number(size));
    await expect(detail).toHaveText(/the cam's mark is (on its line|0\.1 (left|right) of its line)/);
  }

  /** Lets the dial rest, and presses space on it. */
  async read(): Promise<void> {
    await this.zeroing.page.clock.runFor(REST);
    await this.zeroing.dial.press(" ");
  }

  /** A good approach, and a reading. */
  async take(turn: Turn, deviation: Graduations): Promise<void> {
    await this.turnOnto(turn, deviation);
    await this.read();
  }

  async takeAll(turn: Turn, deviations: readonly Graduations[]): Promise<void> {
    for (const deviation of deviations) await this.take(turn, deviation);
  }

  /** A reading that is refused for a reason. */
  async miss(reason: Refusal, asked: Turn): Promise<void> {
    await MISSES[reason](this, asked);
    // A dial still moving has been read already.
    if (reason !== "not-at-rest") await this.read();
  }
}

/** What a hand does to have its reading refused for each reason. */
const MISSES: Readonly<Record<Refusal, (hand: ZeroingHand, asked: Turn) => Promise<void>>> = {
  "not-at-rest": async (hand, asked) => {
    await hand.turnOnto(asked, 0.1 * signOf(opposite(asked)));
    const { keyboard } = hand.zeroing.page;
    // Typed in one go: no time passes between the last nudge and the reading.
    await Promise.all([keyboard.press(asked === "left" ? "," : "."), keyboard.press(" ")]);
  },
  // It has not moved since the reading before.
  "same-stop": async () => {},
  "wrong-way": (hand, asked) => hand.turnOnto(opposite(asked), 0),
  "came-back": async (hand, asked) => {
    await hand.turnOnto(asked, 2 * signOf(asked));
    await hand.keys.turnBy(2 * signOf(opposite(asked)));
  },
  "too-short": async (hand, asked) => {
    await hand.turnOnto(opposite(asked), 10 * signOf(opposite(asked)));
    await hand.keys.turnBy(10 * signOf(asked));
  },
  "off-the-mark": (hand, asked) => hand.turnOnto(asked, 3),
};
