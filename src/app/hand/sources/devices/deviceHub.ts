import { describeSource, type SourceDescription } from "../../../../realdial/sources/sourceDescription";
import type { Problem } from "../../../../wording/problem";
import { Store } from "../../../parts/page/store";
import { recallText, rememberText } from "./deviceMemory";
import { DeviceTurns, type Dials } from "./deviceTurns";
import { DeviceError, deviceProblem, openingProblem } from "./deviceWords";
import type { DeviceLink, DialDevice, OpenDevice } from "./dialDevice";
import { doubtOf } from "./doubtOf";
import { HandWatch } from "./handWatch";
import { keepAwake } from "./keepAwake";
import { LostDevice } from "./lostDevice";
import { PageHold } from "./pageHold";
import type { ScreenFrames } from "./screenFrames";
import { shownPlace } from "./shownPlace";

/** What a step is a part of where no dial is on the screen, graduations. */
const USUAL_TURN = 100;

const directionKey = ({ kind }: DialDevice, which = "") => `dial-device-reversed-${kind}${which}`;

/**
 * The device in the hand: which it is, how it is doing, and the way from its turns to the dial on the screen.
 *
 * One at a time, and one page at a time. What it tells after it was closed is not heard.
 */
export class DeviceHub extends Store {
  device: DialDevice | null = null;
  isOpening = false;
  /** Why it does not turn the dial. */
  trouble: Problem | null = null;
  /** Why the dial may not be where the knob is, until it is read. */
  doubt: Problem | null = null;
  remark: Problem | null = null;
  /** Which turn a knob is being learned by. */
  learning: "left" | "right" | null = null;
  isReversed = false;
  readonly watch: HandWatch;
  private opened: OpenDevice | null = null;
  private readonly lost = new LostDevice();
  private readonly hold = new PageHold();
  private letSleep: (() => void) | null = null;
  private readonly dials: Dials;
  private readonly frames: ScreenFrames;
  private way: DeviceTurns;
  /** The smallest step of the device, turns; null until it turns the dial. */
  private step: number | null = null;
  /** Standard deviation of its readings at rest, turns; null until it is measured. */
  private noise: number | null = null;
  /** Grows with every connection, so that an old one is not heard. */
  private connection = 0;

  constructor(dials: Dials, frames: ScreenFrames) {
    super();
    this.dials = dials;
    this.frames = frames;
    this.way = new DeviceTurns(dials, frames, this);
    this.watch = new HandWatch(dials, () => this.goOn());
  }

  /** Whether its steps have been learned; undefined of a device that has nothing to learn. */
  get isLearned(): boolean | undefined {
    return this.opened?.learner?.isLearned;
  }

  /** What turns the dial that is on the screen; null until it does. */
  get source(): SourceDescription | null {
    const { device, step, noise, dials } = this;
    if (device === null || step === null) return null;
    const perTurn = dials.dial?.perTurn ?? USUAL_TURN;
    const inGraduations = noise === null ? null : noise * perTurn;
    return describeSource(device.kind, step * perTurn, inGraduations, this.opened?.keepsMotion);
  }

  /** How long the hand's moves take to the screen; null while there are too few. */
  get delays() {
    return this.way.delays;
  }

  get isConnected(): boolean {
    return this.opened !== null;
  }

  /** Which one of its kind is connected, where there may be several. */
  get which(): string | undefined {
    return this.opened?.which;
  }

  /** Connects a device in the place of the one before; called while a click is handled. @param open - in its own way */
  async connect(device: DialDevice, open = device.open): Promise<void> {
    const wasLost = this.lost.is(device);
    this.disconnect();
    const connection = this.connection;
    this.device = device;
    this.isOpening = true;
    this.way = new DeviceTurns(this.dials, this.frames, this);
    this.recallDirection(device);
    this.changed();
    try {
      const isHeld = await this.hold.take(() => connection === this.connection);
      if (!isHeld) throw new DeviceError(deviceProblem("second-page", []));
      const opened = await open(this.linkOf(connection));
      if (connection === this.connection) this.begin(device, opened, wasLost);
      else opened.close();
    } catch (error) {
      if (connection === this.connection) this.fail(openingProblem(error, device.title), wasLost);
    }
  }

  /** Lets go of the device. */
  disconnect(): void {
    this.lost.forget();
    this.end(null);
    this.device = null;
    this.doubt = null;
    this.changed();
  }

  /** The panel is closed: what has not turned the dial yet, and must not be left on, is let go. */
  leaveSetup(): void {
    if (this.opened?.isInSetup?.()) this.disconnect();
  }

  /** The knob turns the dial the other way from here on; remembered for this kind of device. */
  reverse(isReversed: boolean): void {
    this.isReversed = isReversed;
    this.way.reverse(isReversed);
    if (this.device !== null) rememberText(directionKey(this.device, this.opened?.which), isReversed ? "yes" : null);
    this.changed();
  }

  /** Goes on with learning: the turn left, the turn right, learned. */
  learnOn(): void {
    const learner = this.opened?.learner;
    if (learner === undefined) return;
    this.trouble = null;
    if (this.learning === "right") {
      const failed = learner.finish();
      if (failed !== null) this.trouble = deviceProblem(failed, []);
      this.learning = null;
    } else {
      this.learning = this.learning === null ? "left" : "right";
      learner.begin(this.learning);
    }
    this.goOn();
  }

  /** The doubt has been read. */
  readDoubt(): void {
    this.doubt = null;
    this.changed();
  }

  /** The knob turns the dial, unless it is being learned or set to a number. */
  private goOn(): void {
    this.way.isPaused = this.learning !== null || this.watch.isAsking;
    this.changed();
  }

  private recallDirection(device: DialDevice, which?: string): void {
    this.isReversed = recallText(directionKey(device, which)) === "yes";
    this.way.reverse(this.isReversed);
  }

  private begin(device: DialDevice, opened: OpenDevice, wasLost: boolean): void {
    this.isOpening = false;
    if (wasLost) this.doubt = deviceProblem("back", [], { device: device.title });
    this.opened = opened;
    this.watch.begin(device, opened);
    if (opened.which !== undefined) this.recallDirection(device, opened.which);
    this.letSleep = keepAwake();
    this.goOn();
  }

  /** Ends the connection, which failed. @param isLost - whether it worked before: then its return is waited for */
  private fail(why: Problem, isLost: boolean): void {
    if (this.source !== null) this.watch.mark(doubtOf(why));
    this.end(why);
    if (isLost && this.device !== null) this.lost.waitFor(this.device, (...again) => this.connect(...again));
  }

  /** Ends the connection. @param why - what is said of it, where it did not end by itself */
  private end(why: Problem | null): void {
    this.way.catchUp();
    this.connection += 1;
    this.opened?.close();
    this.watch.end();
    this.letSleep?.();
    this.hold.letGo();
    this.opened = null;
    this.letSleep = null;
    this.step = null;
    this.noise = null;
    this.isOpening = false;
    this.learning = null;
    this.trouble = why;
    this.remark = null;
    this.changed();
  }

  private linkOf(connection: number): DeviceLink {
    const heard =
      <Told extends unknown[]>(take: (...told: Told) => void) =>
      (...told: Told) => {
        if (connection === this.connection) take(...told);
      };
    const shown = <Told extends unknown[]>(take: (...told: Told) => void) =>
      heard((...told: Told) => {
        this.way.catchUp();
        take(...told);
        this.changed();
      });
    return {
      ready: shown((step) => {
        this.trouble = null;
        this.step = step;
      }),
      measured: heard((noise) => {
        this.noise = noise;
      }),
      turned: heard((turns, at) => this.way.takeDown(turns, at)),
      pressed: heard(() => {
        this.way.catchUp();
        this.watch.pressed();
      }),
      held: shown((why) => {
        this.trouble = why;
      }),
      doubted: shown((why) => {
        this.doubt = why;
        this.watch.mark(doubtOf(why));
      }),
      marked: shown((why) => this.watch.mark(why)),
      remarked: shown((what) => {
        this.remark = what;
      }),
      shown: () => shownPlace(this.dials.dial, this.isReversed),
      // One that has not turned the dial yet is not missed, nor one that nothing was done with.
      lost: heard((why) => this.fail(why, this.step !== null && why.code !== "unused")),
    };
  }
}
