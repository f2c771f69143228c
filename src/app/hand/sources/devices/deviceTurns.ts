import type { Milliseconds } from "../../../../lock/dial";
import { DialMoves } from "../../../../realdial/sources/dialMoves";
import type { SourceDescription } from "../../../../realdial/sources/sourceDescription";
import type { DialInHand } from "../deviceSlot";
import { PaintDelay } from "./paintDelay";
import type { ScreenFrames } from "./screenFrames";

/** Where a device is asked which dial it turns. */
export interface Dials {
  readonly dial: DialInHand | undefined;
}

/** A device that turns the dial: what it is, for records, and who is told of each move. */
interface TurningDevice {
  readonly source: SourceDescription | null;
  readonly watch: { readonly turned: (at: Milliseconds) => void };
}

/**
 * The way from a device's turns to the dial on the screen.
 *
 * A device may tell more than a screen shows: all of one frame goes to the dial at once, so that it is drawn once. Mutable.
 */
export class DeviceTurns {
  /** Whether what is turned does not reach the dial. */
  isPaused = false;
  private isReversed = false;
  private readonly dials: Dials;
  private readonly frames: ScreenFrames;
  private readonly device: TurningDevice;
  private readonly delay: PaintDelay;
  private waiting: { readonly turns: number; readonly at: Milliseconds }[] = [];
  private turns = 0;
  private taken: DialInHand | undefined;
  private moves: DialMoves | null = null;

  constructor(dials: Dials, frames: ScreenFrames, device: TurningDevice) {
    this.dials = dials;
    this.frames = frames;
    this.device = device;
    this.delay = new PaintDelay(frames.afterPaint);
  }

  /** How long the hand's moves take to the screen; null while there are too few. */
  get delays() {
    return this.delay.summary;
  }

  /** From here on the knob turns the dial the other way, or as it did. */
  reverse(isReversed: boolean): void {
    this.catchUp();
    this.isReversed = isReversed;
    this.moves = null;
  }

  /** Takes down where the device is, turns; the next frame brings the dial there. */
  takeDown(turns: number, at: Milliseconds): void {
    this.waiting.push({ turns, at });
    if (this.waiting.length === 1 || this.frames.isHidden()) this.frames.inFrame(() => this.catchUp());
  }

  /** Brings the dial to where the device is. */
  catchUp(): void {
    const told = this.waiting;
    this.waiting = [];
    for (const { turns, at } of told) this.turnDial(turns, at);
  }

  private turnDial(turns: number, at: Milliseconds): void {
    const before = this.turns;
    this.turns = turns;
    const { dial } = this.dials;
    const source = this.device.source ?? undefined;
    // A dial may have come on the screen since the device was told what it may turn.
    const isRefused = source?.keepsNoMotion === true && dial?.drawn().keepsMoves === true;
    if (dial === undefined || this.isPaused || isRefused) {
      this.moves = null;
      return;
    }
    const sign = this.isReversed ? -1 : 1;
    if (this.moves === null || dial !== this.taken) {
      this.taken = dial;
      this.moves = new DialMoves(dial.perTurn);
      this.moves.takeUp(sign * before);
    }
    const by = this.moves.moveTo(sign * turns);
    if (by === 0) return;
    dial.turn(by, at, source);
    this.device.watch.turned(at);
    this.delay.moved(at);
  }
}
