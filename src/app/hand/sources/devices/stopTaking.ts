import type { Graduations, Milliseconds } from "../../../../lock/dial";
import type { DialAct } from "../dialSource";
import { recallText, rememberText } from "./deviceMemory";
import type { Dials } from "./deviceTurns";

/** What records a stop of a dial in the hand. */
export const STOP_WAYS = ["key", "rest", "button"] as const;

/** One of the ways to record a stop. */
export type StopWay = (typeof STOP_WAYS)[number];

const STORED = "dial-device-stop";

/** A dial that stays within this of a place, graduations, for so long, ms, rests there. */
const STILL: Graduations = 0.05;
const RESTS_MS: Milliseconds = 1000;
/** A dial that has left its stop by more than this makes another one, graduations. */
const LEFT: Graduations = 1;

/** What takes the space bar for itself. */
const TAKES_SPACE = "a, button, input, select, summary, textarea, [contenteditable]";

/** Records stops of a dial that a device turns, in the way that was chosen; the dial's own button and key work beside it. Mutable. */
export class StopTaking {
  private readonly dials: Dials;
  /** Whether the device has a button. */
  hasButton = false;
  /** Whether the hand has turned this dial, so that where it rests is a stop. */
  private hasTurned = false;
  /** Where a rest was recorded, until the dial has left it. */
  private taken: Graduations | null = null;
  private place: Graduations = Number.NaN;
  private since: Milliseconds = 0;

  constructor(dials: Dials) {
    this.dials = dials;
  }

  /** The ways that the device has. */
  get ways(): readonly StopWay[] {
    return this.hasButton ? STOP_WAYS : STOP_WAYS.filter((one) => one !== "button");
  }

  /** The one that was chosen; else the button, where there is one. */
  get way(): StopWay {
    const stored = recallText(STORED);
    return this.ways.find((one) => one === stored) ?? (this.hasButton ? "button" : "key");
  }

  choose(way: StopWay): void {
    rememberText(STORED, way);
    this.forget();
  }

  /** What records a stop of the dial on the screen; undefined where no stops are recorded, or none can be now. */
  get act(): DialAct | undefined {
    const drawn = this.dials.dial?.drawn();
    if (drawn === undefined || drawn.isReplay) return undefined;
    return drawn.acts.find(({ key, isClosed }) => key === " " && isClosed !== true);
  }

  /** The hand turns the dial. */
  turned(): void {
    this.hasTurned = true;
  }

  /** The dial on the screen is another, or was moved by something else: where it rests now is no stop of the hand. */
  forget(): void {
    this.hasTurned = false;
    this.taken = null;
  }

  /** The device's button was pressed. */
  pressed(): void {
    if (this.way === "button") this.act?.act();
  }

  /** Time passes. @param now - of the page's steady clock */
  look(now: Milliseconds): void {
    const seen = this.dials.dial?.drawn().seen;
    if (seen === undefined) return;
    if (this.taken !== null && Math.abs(seen - this.taken) > LEFT) this.taken = null;
    if (!(Math.abs(seen - this.place) <= STILL)) {
      this.place = seen;
      this.since = now;
      return;
    }
    if (this.way !== "rest" || !this.hasTurned || this.taken !== null || now - this.since < RESTS_MS) return;
    const { act } = this;
    if (act?.atRest?.isNear() !== true) return;
    this.taken = seen;
    act.act();
  }

  /** Takes the space bar wherever the focus is, where nothing else takes it. @returns listens no more */
  listen(): () => void {
    const press = (event: KeyboardEvent) => {
      const isFree = !(event.defaultPrevented || event.repeat || event.ctrlKey || event.metaKey || event.altKey);
      const { act } = this;
      if (event.key !== " " || this.way !== "key" || !isFree || act === undefined) return;
      if (event.target instanceof Element && event.target.closest(TAKES_SPACE) !== null) return;
      event.preventDefault();
      act.act();
    };
    addEventListener("keydown", press);
    return () => removeEventListener("keydown", press);
  }
}
