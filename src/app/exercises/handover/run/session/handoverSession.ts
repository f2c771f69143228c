import { HandSession } from "../../../../../dialing/hand/handSession";
import { drawCombination } from "../../../../../drill/combinations/drawCombination";
import { replayRun } from "../../../../../handover/run/checkRun";
import type { DoorLock } from "../../../../../handover/run/doorLock";
import type { HandoverRun } from "../../../../../handover/run/handoverRun";
import { lockConsequences } from "../../../../../handover/run/lockConsequences";
import { lockEvent } from "../../../../../handover/run/lockEvent";
import { hinderedByBolt } from "../../../../../handover/run/lockProbe";
import type { RecordedRun } from "../../../../../handover/run/recordedRun";
import type { Dialer, HandoverEvent } from "../../../../../handover/run/rules/handoverEvent";
import { RUN_WORDS } from "../../../../../handover/run/rules/runWords";
import { drawScene } from "../../../../../handover/run/scene";
import { isReleaseBlocked } from "../../../../../handover/run/sceneFit";
import type { Combination } from "../../../../../lock/combination";
import type { Milliseconds } from "../../../../../lock/dial";
import type { RecordForm } from "../../../../../records/handover/recordForm";
import { type Chance, seededChance } from "../../../../../statistics/chance";
import { wordsOf } from "../../../../../wording/problem";
import { HandStore } from "../../../../hand/handStore";
import type { FittingSession } from "../../../fitting/fittingSession";
import type { ZeroingSession } from "../../../zeroing/session/zeroingSession";
import { type Danger, dangerIn } from "./danger";
import type { DoorChange } from "./doorChange";
import { jointsOfRun, keptTray, trayOf, trayOfRun } from "./doorFitting";
import { type Activity, type DoorHappening, DoorWork, type RunSetup } from "./doorWork";
import { type KeptDoor, type KeptRun, keepRun } from "./keptRun";
import { handErrors } from "./simulatedHand";
import { hindered, noted, type Told, toldOf } from "./told";

/** How long the moves of a change wait to be kept: a browser that is killed loses these. */
const KEEP_EVERY: Milliseconds = 500;

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
  door: DoorWork;
  /** The parts of the lock, where it is fitted in the run; null where it came on its door. */
  tray: FittingSession | null;
  told: Told | null = null;
  /** What was written into the record last. */
  form: RecordForm | null;
  private doors: readonly KeptDoor[];
  readonly chance: Chance;
  protected hand: HandSession<DoorHappening>;
  private readonly keep: (run: KeptRun) => void;
  private begunAt: Milliseconds | null = null;
  private movesKeptAt: Milliseconds = -Infinity;

  /**
   * @param keep - takes what is to be found again after a reload
   * @throws {LockError} where what was under way does not fit the lock
   */
  constructor(setup: RunSetup, kept: KeptRun | null = null, keep: (run: KeptRun) => void = keepRun) {
    super();
    const { profile, seed, isHandsOff, isToFit } = setup;
    this.setup = setup;
    this.keep = keep;
    const { run, doors, form, underWay } = kept ?? NOTHING_KEPT;
    this.shipped = profile.asSet ?? drawCombination(profile, seededChance(seed));
    this.recorded = run ?? {
      ...{ format: "gatefall-handover", version: 1, profile, scene: drawScene(seededChance(seed)) },
      ...{ seed, isHandsOff, events: [], ...(isToFit && { fitting: trayOf(profile, seed) }) },
    };
    const { events } = this.recorded;
    this.chance = seededChance(seed + events.length);
    this.run = replayRun(this.recorded);
    this.doors = doors;
    this.form = form;
    this.door = new DoorWork(setup, this.shipped, underWay?.door ?? this.lastDoor(), underWay, jointsOfRun(this.run));
    this.tray = trayOfRun(this.run, underWay?.fitting ?? null, this.chance);
    this.hand = this.takeHold();
    if (events.length > 0) this.told = noted("You are back in your handover, where you left it.");
    if (doors.length === 0) this.doors = [this.door.kept];
  }

  get lock(): DoorLock {
    return this.door.lock;
  }

  get zeroing(): ZeroingSession {
    return this.door.zeroing;
  }

  /** The change of combination under the hand, or null. */
  get change(): DoorChange | null {
    return this.door.change;
  }

  get activity(): Activity {
    return this.door.activity;
  }

  /** Whether the release is blocked now; only a check shows it. */
  get isReleaseBlocked(): boolean {
    return isReleaseBlocked(this.recorded.scene, this.run);
  }

  /** What is wrong at the door as it is now, or null. */
  get danger(): Danger | null {
    return dangerIn(this.run.situation, () => this.door.opensAsWritten);
  }

  /** Numbers that the rules allow. */
  drawOwn(): Combination {
    return drawCombination(this.setup.profile, this.chance);
  }

  /** Takes what happened, or tells why it cannot. @returns whether it happened */
  act(event: HandoverEvent, now: Milliseconds): boolean {
    const hindrance = this.run.hindrance(event) ?? hinderedByBolt(event, this.lock);
    if (hindrance !== undefined) {
      this.refuse(wordsOf(hindrance, RUN_WORDS));
      return false;
    }
    this.begunAt ??= now - (this.recorded.events.at(-1)?.at_ms ?? 0);
    const at_ms = Math.max(Math.round(now - this.begunAt), this.recorded.events.at(-1)?.at_ms ?? 0);
    this.door.take(event);
    const step = this.run.take({ ...event, at_ms, opensAsWritten: this.opensAsWritten(event) });
    this.recorded = { ...this.recorded, events: [...this.recorded.events, step.event] };
    this.told = toldOf(step, lockConsequences(event, this.lock, step.faults.length > 0));
    this.doors = [...this.doors, this.door.kept];
    this.keepNow();
    this.changed();
    return true;
  }

  /** Whether the combination as written opens the lock as an event leaves it; nothing of a lock in parts. */
  private opensAsWritten(event: HandoverEvent): boolean | undefined {
    if (event.type === "lock.takenApart") return undefined;
    if (this.run.situation.fit === "apart" && event.type !== "lock.fitted") return undefined;
    return this.door.opensAsWritten;
  }

  /** Tells why nothing happens. */
  refuse(words: string): void {
    this.tell(hindered(words));
  }

  tell(told: Told): void {
    this.told = told;
    this.changed();
  }

  private takeHold(): HandSession<DoorHappening> {
    return new HandSession<DoorHappening>(this.door, {
      weight: this.setup.weight,
      heard: (happenings, by, at) => {
        for (const happening of happenings) this.heard(happening, at);
        if (this.change !== null && by !== 0) this.keepMoves(happenings.length > 0, at);
      },
    });
  }

  /** Keeps what the hand has done in a change as something comes of it, and else now and then. */
  private keepMoves(hasCome: boolean, now: Milliseconds): void {
    if (!hasCome && now - this.movesKeptAt < KEEP_EVERY) return;
    this.movesKeptAt = now;
    this.keepNow();
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
    const hindrance =
      activity === "ring" ? hindranceOf({ type: "zero.set", side: "left" }, this.run.situation) : undefined;
    this.door.show(activity);
    this.changed();
  }

  /** Puts a change of combination under the hand, or takes it away. */
  takeChange(change: DoorChange | null): void {
    this.door.takeChange(change);
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
    this.door = new DoorWork(this.setup, this.shipped, this.lastDoor(), null, jointsOfRun(this.run));
    this.tray = trayOfRun(this.run, null, this.chance);
    this.hand = this.takeHold();
    this.told = noted("You are back at that step. What came after it stays on record.");
    this.keepNow();
    this.changed();
  }

  /** Writes the record. */
  writeRecord(form: RecordForm, now: Milliseconds): void {
    this.form = form;
    this.act({ type: "record.written" }, now);
  }

  private heard(happening: DoorHappening, now: Milliseconds): void {
    if (happening === "held") this.told = hindered("The dial is blocked: the holdback holds the bolt back.");
    const event = happening === "changed" ? null : lockEvent(happening, this.run.situation.bolt);
    if (event !== null) this.act(event, now);
  }

  /** Keeps the run with all that is under way. */
  keepNow(): void {
    const { recorded, doors, form, door, run } = this;
    const fitting = this.tray === null ? {} : { fitting: keptTray(this.tray) };
    this.keep({ run: recorded, doors, form, underWay: { ...door.underWay, ...fitting }, isEnded: run.isHandedOver });
  }

  /** Keeps it before the page goes; a run that nobody has begun takes the place of no other. */
  keepIfBegun(): void {
    if (this.isBegun) this.keepNow();
  }

  /** Whether anything has been done that could be lost. */
  get isBegun(): boolean {
    const isAtWork = this.change !== null || this.zeroing.version > 0 || (this.tray?.version ?? 0) > 0;
    return this.recorded.events.length > 0 || isAtWork;
  }

  /** How the lock stood after the last step that counts; at the beginning where none does. */
  private lastDoor(): KeptDoor | undefined {
    return this.doors[this.run.steps.findLastIndex(({ isUndone }) => !isUndone) + 1];
  }
}
