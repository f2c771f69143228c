import type { Graduations, Milliseconds } from "../../../lock/dial";
import { exact } from "../../../lock/exact";
import type { SetupRecord } from "../../../realdial/setup/setupRecord";
import { stopError, stopsAsked } from "../../../realdial/setup/stopAsked";
import { type StopProgress, StopTaker } from "../../../realdial/setup/stopTaker";
import type { DialInHand } from "../../hand/sources/deviceSlot";
import type { TurnDial } from "../../hand/sources/dialSource";
import { Store } from "../../parts/page/store";

/** What there is to do, in order. */
export const SETUP_STEPS = ["source", "connect", "zero", "checks", "done"] as const;

/** One of {@link SETUP_STEPS}. */
export type SetupStep = (typeof SETUP_STEPS)[number];

/** So much of a turn tells which way the numbers count. */
const TELLS_DIRECTION = 0.08;

/**
 * The setup of a dial in the hand, a step at a time, with the dial on the screen that it turns meanwhile.
 *
 * Mutable. Time is handed in.
 */
export class SetupSession extends Store implements DialInHand {
  readonly perTurn: Graduations;
  step: SetupStep;
  /** Whether another step was gone to since it began. */
  hasMoved = false;
  /** Whether the dial on the screen shows what is meant as 0 as 0. */
  isZeroed = false;
  /** Which way the numbers went as the dial was turned left; null until it was turned far enough. */
  counted: "up" | "down" | null = null;
  /** Errors of the stops that were made, left positive, graduations. */
  errors: readonly Graduations[] = [];
  /** How the stop that is asked for now is getting on. */
  progress: StopProgress["state"] = "turning";
  /** The largest standard deviation of a rest, graduations; null before the first. */
  noise: Graduations | null = null;
  /** What was found; null until all is done. */
  found: SetupRecord | null = null;
  private place: Graduations = 0;
  /** Whether 0 is taken once the dial rests on it; else only where the person says so. */
  private seesZero = false;
  private taker: StopTaker;

  constructor(perTurn: Graduations, step: SetupStep) {
    super();
    this.perTurn = perTurn;
    this.step = step;
    this.taker = this.takerOfZero();
  }

  readonly turn: TurnDial = (by) => {
    this.place = exact(this.place + by);
    this.taker.turned(this.place);
    this.tellDirection();
    this.changed();
  };

  /** A training's dial: nothing is recorded of it, and nothing on the screen turns it. */
  readonly drawn = () => ({
    position: this.place,
    seen: this.place,
    acts: [],
    isReplay: false,
    onDoubt: () => false,
  });

  readonly screenMoves = () => 0;

  /** Where the dial on the screen is, unwrapped. */
  get position(): Graduations {
    return this.place;
  }

  /** The stop that is asked for; undefined once all are made. */
  get asked() {
    return stopsAsked(this.perTurn)[this.errors.length];
  }

  goTo(step: SetupStep): void {
    this.step = step;
    this.hasMoved = true;
    if (step === "checks") this.beginChecks();
    this.changed();
  }

  /** Says where 0 is. @param hasNumbers - whether the device sees where its own 0 is; else it begins at 0 wherever it is */
  beginZero(hasNumbers: boolean): void {
    if (!hasNumbers) this.place = 0;
    this.seesZero = hasNumbers;
    this.isZeroed = false;
    this.counted = null;
    this.taker = this.takerOfZero();
    this.goTo("zero");
  }

  /** Where the knob is now is 0. */
  setZero(): void {
    this.place = 0;
    this.isZeroed = true;
    this.counted = null;
    this.changed();
  }

  /** The knob turns the dial the other way from here on: where it was up, it is down. */
  turnedRound(): void {
    this.place = exact(-this.place);
    this.tellDirection();
    this.changed();
  }

  /** Looks how the dial stands, some times a second. @param isSure - whether it is where the knob is */
  look(at: Milliseconds, isSure: boolean): void {
    if (!isSure) {
      this.taker.loseSight();
      return;
    }
    if (this.step === "zero" && this.seesZero && !this.isZeroed) this.lookForZero(at);
    if (this.step === "checks" && this.asked !== undefined) this.lookForStop(at);
  }

  /** The dial is where it was meant to be, however far that is from the number. */
  takeStop(): void {
    const { asked } = this;
    if (asked !== undefined) this.took(stopError(this.place, asked.number, this.perTurn));
  }

  /** All is done. */
  finish(found: SetupRecord): void {
    this.found = found;
    this.goTo("done");
  }

  /** All stops once more. */
  beginChecks(): void {
    this.errors = [];
    this.beginStop();
    this.changed();
  }

  private takerOfZero(): StopTaker {
    return new StopTaker({ number: 0, turn: "left" }, this.perTurn);
  }

  private beginStop(): void {
    this.progress = "turning";
    if (this.asked === undefined) return;
    this.taker = new StopTaker(this.asked, this.perTurn);
    this.taker.turned(this.place);
  }

  /** A dial with numbers of its own is brought to its 0. */
  private lookForZero(at: Milliseconds): void {
    if (this.taker.take(this.place, at).state === "turning") return;
    this.isZeroed = true;
    this.counted = null;
    this.changed();
  }

  private lookForStop(at: Milliseconds): void {
    const progress = this.taker.take(this.place, at);
    if (progress.state === "stopped") {
      this.noise = Math.max(this.noise ?? 0, progress.noise);
      this.took(progress.error);
    } else if (progress.state !== this.progress) {
      this.progress = progress.state;
      this.changed();
    }
  }

  private took(error: Graduations): void {
    this.errors = [...this.errors, error];
    this.beginStop();
    this.changed();
  }

  private tellDirection(): void {
    const off = stopError(this.place, 0, this.perTurn);
    if (!this.isZeroed || this.step !== "zero" || Math.abs(off) < TELLS_DIRECTION * this.perTurn) return;
    this.counted = off > 0 ? "up" : "down";
  }
}
