import type { Milliseconds } from "../../../../lock/dial";
import type { DialDoubt } from "../../../../realdial/sources/dialDoubt";
import { recallText, rememberText } from "./deviceMemory";
import type { Dials } from "./deviceTurns";
import { DialAgreement } from "./dialAgreement";
import type { DialDevice, OpenDevice } from "./dialDevice";
import { StopTaking, type StopWay } from "./stopTaking";

/** So often the dial is looked at, ms. */
const LOOKS_EVERY_MS: Milliseconds = 200;

const numbersKey = ({ kind }: DialDevice) => `dial-device-numbers-${kind}`;

/**
 * Watches a hand at a device and the dial that it turns: stops that are to be recorded, and whether the dial in the hand and the
 * one on the screen still agree. A device that sees numbers finds to the one on the screen by itself; a knob with numbers is
 * asked for it; a bare knob goes on from where it is, and that is said. Mutable.
 */
export class HandWatch {
  readonly stops: StopTaking;
  /** Whether the knob is to be set to the number on the screen before it turns that dial on. */
  isAsking = false;
  /** Whether what is under way was marked when a doubt came up last. */
  isMarked = false;
  private readonly dials: Dials;
  private readonly agreement: DialAgreement;
  private readonly onChange: () => void;
  private device: DialDevice | null = null;
  private opened: OpenDevice | null = null;
  private stopLooking: (() => void) | null = null;

  /** @param onChange - told when there is something else to say */
  constructor(dials: Dials, onChange: () => void) {
    this.dials = dials;
    this.stops = new StopTaking(dials);
    this.agreement = new DialAgreement(dials);
    this.onChange = onChange;
  }

  /** Whether a bare knob has just gone on from wherever it was. */
  get hasGoneOn(): boolean {
    return this.opened !== null && this.opened.comeApart === undefined && !this.isAsking && this.agreement.hasGoneOn;
  }

  /** Whether the knob shows numbers, by what was said of its kind; undefined of a device that sees its own. */
  get hasNumbers(): boolean | undefined {
    if (this.device === null || this.opened?.comeApart !== undefined) return undefined;
    return recallText(numbersKey(this.device)) === "yes";
  }

  /** The device is open. */
  begin(device: DialDevice, opened: OpenDevice): void {
    this.device = device;
    this.opened = opened;
    this.isAsking = this.hasNumbers === true;
    // Of the devices, the encoder alone has one.
    this.stops.hasButton = device.kind === "encoder";
    const timer = setInterval(() => this.look(performance.now()), LOOKS_EVERY_MS);
    this.stopLooking = () => clearInterval(timer);
  }

  end(): void {
    this.stopLooking?.();
    this.stopLooking = null;
    this.device = null;
    this.opened = null;
    this.isAsking = false;
  }

  /** The hand turns the dial. @param at - of the page's steady clock */
  turned(at: Milliseconds): void {
    this.agreement.turned(at);
    this.stops.turned();
  }

  /** The turns may be miscounted from here on: what is under way is marked. */
  mark(why: DialDoubt): void {
    this.isMarked = this.dials.dial?.drawn().onDoubt(why) === true;
  }

  /** The device's button was pressed: the knob is at the number that was asked for, or at a stop. */
  pressed(): void {
    if (this.isAsking) this.set();
    else this.stops.pressed();
  }

  /** The knob shows the number that was asked for. */
  set(): void {
    this.isAsking = false;
    this.onChange();
  }

  /** Says whether the knob shows numbers: then it is set to the one on the screen. Remembered for its kind. */
  setNumbers(has: boolean): void {
    if (this.device === null) return;
    rememberText(numbersKey(this.device), has ? "yes" : null);
    this.isAsking = has;
    this.onChange();
  }

  /** Chooses what records a stop; remembered. */
  chooseStop(way: StopWay): void {
    this.stops.choose(way);
    this.onChange();
  }

  private look(now: Milliseconds): void {
    this.stops.look(now);
    const { hasGoneOn } = this;
    if (this.agreement.look(now)) {
      this.opened?.comeApart?.();
      this.stops.forget();
      this.isAsking = this.hasNumbers === true;
      this.onChange();
    } else if (hasGoneOn !== this.hasGoneOn) this.onChange();
  }
}
