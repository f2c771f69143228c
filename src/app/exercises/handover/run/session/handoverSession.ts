import { HandSession } from "../../../../../dialing/hand/handSession";
import { explain } from "../../../../../drill/combinationRules";
import { drawCombination } from "../../../../../drill/drawCombination";
import { replayRun } from "../../../../../handover/run/checkRun";
import { DoorLock, type LockHappening } from "../../../../../handover/run/doorLock";
import type { Dialer, HandoverEvent } from "../../../../../handover/run/handoverEvent";
import type { HandoverRun } from "../../../../../handover/run/handoverRun";
import { lockConsequences } from "../../../../../handover/run/lockConsequences";
import { halfDrawn, opensAsWritten } from "../../../../../handover/run/lockProbe";
import type { RecordedRun } from "../../../../../handover/run/recordedRun";
import { drawScene } from "../../../../../handover/run/scene";
import { isReleaseBlocked } from "../../../../../handover/run/sceneFit";
import type { Combination } from "../../../../../lock/combination";
import type { Graduations, Milliseconds } from "../../../../../lock/dial";
import type { Profile } from "../../../../../lock/profile";
import type { RecordForm } from "../../../../../records/handover/recordForm";
import { type Chance, seededChance } from "../../../../../statistics/chance";
import { HandStore } from "../../../../hand/handStore";
import type { ZeroingSession } from "../../../zeroing/zeroingSession";
import { type KeptDoor, type KeptRun, keepRun, type UnderWay } from "../kept/keptRun";
import { hindered, noted, type Told, toldOf } from "../told";
import { type Danger, dangerIn } from "./danger";
import { DoorChange } from "./doorChange";
import { doorZeroing, keptDoor, learnedBy } from "./doorZeroing";
import { handErrors } from "./simulatedHand";

/** What a run is set up for. */
export interface RunSetup {
  readonly profile: Profile;
  readonly seed: number;
  /** Whether a simulated hand does the dialing. */
  readonly isHandsOff: boolean;
}

/** How long the moves of a change wait to be kept: a browser that is killed loses these. */
const KEEP_EVERY: Milliseconds = 500;

/** What the hand on the dial is doing. */
export type Activity = "dial" | "ring" | "change";

const NOTHING_KEPT = { run: null, doors: [], form: null, underWay: null } as const;

/**
 * One handover run on the screen: the chart with its history, and the lock on the door that the hand works.
 *
 * A store outside React. Time is handed in; chance comes from the run's seed.
 */
export class HandoverSession extends HandStore {
  readonly setup: RunSetup;
  readonly shipped: Combination;
  recorded: RecordedRun;
  run: HandoverRun;
  zeroing: ZeroingSession;
  lock: DoorLock;
  change: DoorChange | null = null;
  activity: Activity = "dial";
  told: Told | null = null;
  /** What was written into the record last. */
  form: RecordForm | null;
  private doors: readonly KeptDoor[];
  readonly chance: Chance;
  protected readonly hand = this.takeDial();
  private readonly keep: (run: KeptRun) => void;
  private begunAt: Milliseconds | null = null;
  private movesKeptAt: Milliseconds = -Infinity;

  /**
   * @param keep - takes what is to be found again after a reload
   * @throws {LockError} where what was under way does not fit the lock
   */
  constructor(setup: RunSetup, kept: KeptRun | null = null, keep: (run: KeptRun) => void = keepRun) {
    super();
    const { profile, seed, isHandsOff } = setup;
    this.setup = setup;
    this.keep = keep;
    const { run, doors, form, underWay } = kept ?? NOTHING_KEPT;
    this.shipped = profile.asSet ?? drawCombination(profile, seededChance(seed));
    this.recorded = run ?? {
      ...{ format: "gatefall-handover", version: 1, profile, scene: drawScene(seededChance(seed)) },
      ...{ seed, isHandsOff, events: [] },
    };
    const { events } = this.recorded;
    this.chance = seededChance(seed + events.length);
    this.run = replayRun(this.recorded);
    this.doors = doors;
    this.form = form;
    const door = underWay?.door ?? this.lastDoor();
    this.zeroing = doorZeroing(profile, seed, door, underWay?.hand);
    this.lock = this.lockOf(door);
    if (underWay !== null) this.takeUp(underWay);
    if (events.length > 0) this.told = noted("You are back in your handover, where you left it.");
    if (doors.length === 0) this.doors = [keptDoor(this.lock, this.zeroing)];
  }

  /** Whether the release is blocked now; only a check shows it. */
  get isReleaseBlocked(): boolean {
    return isReleaseBlocked(this.recorded.scene, this.run);
  }

  /** What is wrong at the door as it is now, or null. */
  get danger(): Danger | null {
    return dangerIn(this.run.situation, () => opensAsWritten(this.lock, learnedBy(this.zeroing)));
  }

  /** Rules that a combination breaks, in words; none where it is allowed. */
  broken(numbers: Combination): readonly string[] {
    const { combinationRules, graduations } = this.setup.profile;
    return explain(numbers, combinationRules, graduations).map(({ message, source }) => `${message} (${source})`);
  }

  /** Numbers that the rules allow. */
  drawOwn(): Combination {
    return drawCombination(this.setup.profile, this.chance);
  }

  /** Takes what happened, or tells why it cannot. @returns whether it happened */
  act(event: HandoverEvent, now: Milliseconds): boolean {
    const hindrance = this.run.hindrance(event) ?? halfDrawn(event, this.lock);
    if (hindrance !== undefined) {
      this.refuse(hindrance);
      return false;
    }
    this.begunAt ??= now - (this.recorded.events.at(-1)?.at_ms ?? 0);
    const at_ms = Math.max(Math.round(now - this.begunAt), this.recorded.events.at(-1)?.at_ms ?? 0);
    this.workLock(event);
    const step = this.run.take({ ...event, at_ms, opensAsWritten: opensAsWritten(this.lock, learnedBy(this.zeroing)) });
    this.recorded = { ...this.recorded, events: [...this.recorded.events, step.event] };
    this.told = toldOf(step, lockConsequences(event, this.lock, step.faults.length > 0));
    this.doors = [...this.doors, keptDoor(this.lock, this.zeroing)];
    this.keepNow();
    this.changed();
    return true;
  }

  /** What an act does to the lock on the door, besides what a hand has done already. */
  private workLock({ type }: HandoverEvent): void {
    if (type === "holdback.set") this.lock.setHoldback();
    if (type === "holdback.released") this.lock.releaseHoldback();
    if (type === "pack.rebuilt") this.lock.set(this.shipped, this.shipped);
  }

  /** Tells why nothing happens. */
  refuse(words: string): void {
    this.tell(hindered(words));
  }

  tell(told: Told): void {
    this.told = told;
    this.changed();
  }

  private takeDial(): HandSession<never> {
    const hand = () => this.lock.hand;
    return new HandSession<never>({
      get dial() {
        return hand().dial;
      },
      turnBy: (by, at) => {
        if (this.change === null) for (const happening of this.lock.turnBy(by, at)) this.heard(happening, at);
        // What is kept of a change has no rests: its times tell them.
        else if (by !== 0) this.turnInChange(this.change, by, at);
        return [];
      },
    });
  }

  /** Keeps what the hand has done as something comes of it, and else now and then. */
  private turnInChange(change: DoorChange, by: Graduations, now: Milliseconds): void {
    const hasCome = change.turnBy(by, now);
    if (!hasCome && now - this.movesKeptAt < KEEP_EVERY) return;
    this.movesKeptAt = now;
    this.keepNow();
  }

  /** The trainee says that the try has failed. */
  giveUp(now: Milliseconds): void {
    if (this.lock.retraction > 0 && !this.lock.isHeld) this.refuse("The bolt is back: the lock opened.");
    else this.act({ type: "combination.dialed", by: "trainee", opened: false }, now);
  }

  /** A simulated hand dials the combination as it is written. */
  dialBySimulation(by: Dialer, now: Milliseconds): void {
    const errors = handErrors(this.lock.meant, this.chance);
    const opened = this.lock.isHeld ? false : this.lock.dialBy(this.lock.meant, errors);
    this.act({ type: "combination.dialed", by, opened }, now);
  }

  /** A simulated hand turns the dial back, as far as throws the bolt or spins the lock off. */
  turnBack(type: "bolt.thrown" | "lock.spunOff", now: Milliseconds): void {
    if (type === "lock.spunOff") this.lock.spinOff();
    else if (this.run.hindrance({ type }) === undefined) this.lock.throwBolt();
    this.act({ type }, now);
  }

  /** Shows another thing for the hand to do; from the ring one comes back to a lock that counts by what it learned. */
  show(activity: Activity): void {
    if (this.activity === "ring") this.lock.learn(learnedBy(this.zeroing));
    this.activity = activity;
    this.changed();
  }

  /** Puts a change of combination under the hand, or takes it away. */
  takeChange(change: DoorChange | null): void {
    this.change = change;
    this.activity = change === null ? "dial" : "change";
    this.keepNow();
    this.changed();
  }

  /** Works at the change under way, and keeps what came of it. */
  workOnChange(does: (change: DoorChange) => void): void {
    if (this.change === null) return;
    does(this.change);
    this.keepNow();
    this.changed();
  }

  /** Takes the run back to where it stood after some of the steps that count; the lock goes back with it. */
  goBackTo(steps: number): void {
    this.run.goBackTo(steps);
    const at_ms = this.recorded.events.at(-1)?.at_ms ?? 0;
    const event = { type: "run.wentBack", steps, at_ms } as const;
    this.recorded = { ...this.recorded, events: [...this.recorded.events, event] };
    this.change = null;
    this.activity = "dial";
    this.zeroing = doorZeroing(this.setup.profile, this.setup.seed, this.lastDoor());
    this.lock = this.lockOf(this.lastDoor());
    this.told = noted("You are back at that step. What came after it stays on record.");
    this.keepNow();
    this.changed();
  }

  /** Writes the record. */
  writeRecord(form: RecordForm, now: Milliseconds): void {
    this.form = form;
    this.act({ type: "record.written" }, now);
  }

  private heard(happening: LockHappening, now: Milliseconds): void {
    if (happening === "opened") this.act({ type: "combination.dialed", by: "trainee", opened: true }, now);
    if (happening === "drawnAgain") this.act({ type: "bolt.drawnAgain" }, now);
    if (happening === "refused") this.act({ type: "combination.dialed", by: "trainee", opened: false }, now);
    if (happening === "thrown" && this.run.situation.bolt === "retracted") this.act({ type: "bolt.thrown" }, now);
    if (happening === "spunOff" && this.run.situation.bolt === "thrown") this.act({ type: "lock.spunOff" }, now);
    if (happening === "held") {
      this.told = hindered("The dial is blocked: the holdback holds the bolt back.");
    }
  }

  /** Keeps the run with all that is under way. */
  keepNow(): void {
    const { recorded, doors, form, lock, zeroing } = this;
    const underWay = {
      door: keptDoor(lock, zeroing),
      hand: lock.hand.dial,
      isAtRing: this.activity === "ring",
      change: this.change?.kept ?? null,
    };
    this.keep({ run: recorded, doors, form, underWay, isEnded: this.run.isHandedOver });
  }

  /** Keeps it before the page goes; a run that nobody has begun takes the place of no other. */
  keepIfBegun(): void {
    if (this.isBegun) this.keepNow();
  }

  /** Whether anything has been done that could be lost. */
  get isBegun(): boolean {
    return this.recorded.events.length > 0 || this.change !== null || this.zeroing.version > 0;
  }

  /** How the lock stood after the last step that counts; at the beginning where none does. */
  private lastDoor(): KeptDoor | undefined {
    return this.doors[this.run.steps.findLastIndex(({ isUndone }) => !isUndone) + 1];
  }

  /** Goes on where the hand was when the page went. @throws {LockError} where that does not fit the lock */
  private takeUp({ isAtRing, change }: UnderWay): void {
    if (isAtRing) this.activity = "ring";
    if (change === null) return;
    this.change = DoorChange.resume(this.setup.profile, this.lock, change);
    this.activity = "change";
  }

  private lockOf(door: KeptDoor | undefined): DoorLock {
    const kept = door?.lock ?? { meant: this.shipped, setTo: this.shipped, dial: 0, isOpen: false, isHeld: false };
    return new DoorLock(this.setup.profile, this.zeroing.lock, kept, learnedBy(this.zeroing));
  }
}
