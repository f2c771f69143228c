import { explain } from "../../../drill/combinationRules";
import { drawCombination } from "../../../drill/drawCombination";
import { opensTo } from "../../../handover/change/opensTo";
import type { RecordForm } from "../../../handover/record/recordForm";
import { DoorLock, type LockHappening } from "../../../handover/run/doorLock";
import type { Dialer, HandoverEvent } from "../../../handover/run/handoverEvent";
import { HandoverRun } from "../../../handover/run/handoverRun";
import type { RecordedRun } from "../../../handover/run/recordedRun";
import { drawScene } from "../../../handover/run/scene";
import { isReleaseBlocked } from "../../../handover/run/sceneFit";
import type { Combination } from "../../../lock/combination";
import type { Graduations, Milliseconds } from "../../../lock/dial";
import type { Profile } from "../../../lock/profile";
import { type Chance, seededChance } from "../../../statistics/chance";
import { Store } from "../../shell/store";
import type { ZeroingSession } from "../../zeroing/zeroingSession";
import { DoorChange } from "./doorChange";
import { doorZeroing, keptDoor, learnedBy } from "./doorZeroing";
import { type KeptDoor, type KeptRun, keepRun } from "./keptRun";
import { handErrors, setBySimulation } from "./simulatedHand";
import { hindered, noted, type Told, toldOf } from "./told";

/** What a run is set up for. */
export interface RunSetup {
  readonly profile: Profile;
  readonly seed: number;
  /** Whether a simulated hand does the dialing. */
  readonly isHandsOff: boolean;
}

/** What the hand on the dial is doing. */
export type Activity = "dial" | "ring" | "change";

/**
 * One handover run on the screen: the chart with its history, and the lock on the door that the hand works.
 *
 * A store outside React. Time is handed in; chance comes from the run's seed.
 */
export class HandoverSession extends Store {
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
  private readonly chance: Chance;
  private readonly keep: (run: KeptRun) => void;
  private begunAt: Milliseconds | null = null;

  /** @param keep - takes what is to be found again after a reload */
  constructor(setup: RunSetup, kept: KeptRun | null = null, keep: (run: KeptRun) => void = keepRun) {
    super();
    const { profile, seed, isHandsOff } = setup;
    this.setup = setup;
    this.keep = keep;
    this.chance = seededChance(seed + (kept?.run.events.length ?? 0));
    this.shipped = profile.asSet ?? drawCombination(profile, seededChance(seed));
    const scene = drawScene(seededChance(seed));
    this.recorded = kept?.run ?? {
      ...{ format: "gatefall-handover", version: 1, profile, scene, seed, isHandsOff, events: [] },
    };
    this.run = new HandoverRun(profile);
    for (const event of this.recorded.events) {
      if (event.type === "run.wentBack") this.run.goBackTo(event.steps);
      else this.run.take(event);
    }
    this.doors = kept?.doors ?? [];
    this.form = kept?.form ?? null;
    this.zeroing = doorZeroing(profile, seed, this.lastDoor());
    this.lock = this.lockOf(this.lastDoor());
    if (this.doors.length === 0) this.doors = [keptDoor(this.lock, this.zeroing)];
  }

  /** Whether the release is blocked now; only a check shows it. */
  get isReleaseBlocked(): boolean {
    return isReleaseBlocked(this.recorded.scene, this.run);
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
    const hindrance = this.run.hindrance(event);
    if (hindrance !== undefined) {
      this.refuse(hindrance);
      return false;
    }
    this.begunAt ??= now - (this.recorded.events.at(-1)?.at_ms ?? 0);
    const at_ms = Math.max(Math.round(now - this.begunAt), this.recorded.events.at(-1)?.at_ms ?? 0);
    const step = this.run.take({ ...event, at_ms });
    this.recorded = { ...this.recorded, events: [...this.recorded.events, step.event] };
    this.told = toldOf(step);
    if (event.type === "holdback.set") this.lock.setHoldback();
    if (event.type === "holdback.released") this.lock.releaseHoldback();
    if (event.type === "pack.rebuilt") this.lock.set(this.shipped, this.shipped);
    this.doors = [...this.doors, keptDoor(this.lock, this.zeroing)];
    this.save();
    this.changed();
    return true;
  }

  /** Tells why nothing happens. */
  refuse(words: string): void {
    this.told = hindered(words);
    this.changed();
  }

  /** Turns the dial by hand. */
  turnBy(by: Graduations, now: Milliseconds): void {
    if (by === 0) return;
    if (this.change !== null) this.change.turnBy(by, now);
    else for (const happening of this.lock.turnBy(by, now)) this.heard(happening, now);
    this.changed();
  }

  /** The trainee says that the try has failed. */
  giveUp(now: Milliseconds): void {
    this.act({ type: "combination.dialed", by: "trainee", opened: false }, now);
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

  /** Begins a change by hand, or lets a simulated hand make it. */
  changeTo(wanted: Combination, now: Milliseconds): void {
    const isAllowed = this.broken(wanted).length === 0;
    if (this.run.hindrance({ type: "combination.changed", outcome: "true", isAllowed }) !== undefined) {
      this.act({ type: "combination.changed", outcome: "true", isAllowed }, now);
      return;
    }
    if (this.setup.isHandsOff)
      this.finishChange(wanted, setBySimulation(wanted, this.setup.profile.graduations, this.chance), now);
    else this.beginChange(wanted);
  }

  private beginChange(wanted: Combination): void {
    if (this.lock.retraction > 0 && this.setup.profile.kind === "wheel-pack") {
      this.refuse("The bolt is back, and so the change key does not go in. Spin off first.");
      return;
    }
    this.change = new DoorChange(this.setup.profile, this.lock, wanted);
    this.activity = "change";
    this.changed();
  }

  /** The change is done, or left: the lock is what it has become. */
  leaveChange(now: Milliseconds): void {
    const { change } = this;
    if (change === null) return;
    this.change = null;
    this.activity = "dial";
    if (change.isDone) this.finishChange(change.wanted, change.setTo, now);
    else this.lock.set(this.lock.meant, change.setTo);
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
    this.save();
    this.changed();
  }

  /** Writes the record. */
  writeRecord(form: RecordForm, now: Milliseconds): void {
    this.form = form;
    this.act({ type: "record.written" }, now);
  }

  private heard(happening: LockHappening, now: Milliseconds): void {
    if (happening === "opened") this.act({ type: "combination.dialed", by: "trainee", opened: true }, now);
    if (happening === "refused") this.act({ type: "combination.dialed", by: "trainee", opened: false }, now);
    if (happening === "thrown" && this.run.situation.bolt === "retracted") this.act({ type: "bolt.thrown" }, now);
    if (happening === "spunOff" && this.run.situation.bolt === "thrown") this.act({ type: "lock.spunOff" }, now);
    if (happening === "held") {
      this.told = hindered("The holdback holds the bolt back: the dial does not turn.");
    }
  }

  private finishChange(wanted: Combination, setTo: Combination | null, now: Milliseconds): void {
    this.lock.set(wanted, setTo);
    const opens = opensTo(this.setup.profile, setTo, wanted);
    const outcome = setTo === null ? "spoiled" : opens ? "true" : "off";
    this.act({ type: "combination.changed", outcome, isAllowed: this.broken(wanted).length === 0 }, now);
  }

  private save(): void {
    this.keep({ run: this.recorded, doors: this.doors, form: this.form });
  }

  /** How the lock stood after the last step that counts; at the beginning where none does. */
  private lastDoor(): KeptDoor | undefined {
    return this.doors[this.run.steps.findLastIndex(({ isUndone }) => !isUndone) + 1];
  }

  private lockOf(door: KeptDoor | undefined): DoorLock {
    const kept = door?.lock ?? { meant: this.shipped, setTo: this.shipped, dial: 0, isOpen: false, isHeld: false };
    return new DoorLock(this.setup.profile, this.zeroing.lock, kept, learnedBy(this.zeroing));
  }
}
