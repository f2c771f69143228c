import { HandSession } from "../../../../../dialing/hand/handSession";
import { drawCombination } from "../../../../../drill/combinations/drawCombination";
import { begunRun } from "../../../../../handover/run/begunRun";
import { replayRun } from "../../../../../handover/run/checkRun";
import type { DoorLock } from "../../../../../handover/run/doorLock";
import type { HandoverRun } from "../../../../../handover/run/handoverRun";
import { lockConsequences } from "../../../../../handover/run/lockConsequences";
import { lockEvent } from "../../../../../handover/run/lockEvent";
import { hinderedByBolt } from "../../../../../handover/run/lockProbe";
import type { RecordedRun } from "../../../../../handover/run/recordedRun";
import type { HandoverEvent } from "../../../../../handover/run/rules/handoverEvent";
import { RUN_WORDS } from "../../../../../handover/run/rules/runWords";
import { fitOfRun } from "../../../../../handover/run/runFitting";
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
import { BACK, FIT_EVENTS, IN_TRAY, keptTray, opensAfter, trayBefore, trayOfRun } from "./doorFitting";
import { type Activity, type DoorHappening, DoorWork, KEEP_EVERY, type RunSetup } from "./doorWork";
import {
  type KeptDoor,
  type KeptFitting,
  type KeptRun,
  keepRun,
  lastDoorOf,
  NOTHING_KEPT,
  type UnderWay,
} from "./keptRun";
import { hindered, noted, type Told, toldOf } from "./told";
import { noteTurnedBefore } from "./turnedBefore";

/**
 * One handover run on the screen: the chart with its history, and the lock on the door that the hand works.
 *
 * A store outside React. Time is handed in; chance comes from the run's seed.
 */
export class HandoverSession extends HandStore {
  readonly keepsMoves = true;
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
    this.setup = setup;
    this.keep = keep;
    const { run, doors, form, underWay } = kept ?? NOTHING_KEPT;
    this.shipped = setup.profile.asSet ?? drawCombination(setup.profile, seededChance(setup.seed));
    this.recorded = run ?? begunRun(setup);
    const { events } = this.recorded;
    this.chance = seededChance(setup.seed + events.length);
    this.run = replayRun(this.recorded);
    noteTurnedBefore(this.recorded, this.turnedBy);
    this.doors = doors;
    this.form = form;
    this.door = this.doorAsKept(underWay);
    this.tray = this.layTray(underWay?.fitting ?? null);
    this.hand = this.takeHold();
    if (this.tray !== null || events.length > 0) this.told = noted(events.length > 0 ? BACK : IN_TRAY);
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
    if (event.type === "lock.fitted") this.takeDoor(this.door.refitted(this.setup, this.tray?.fit ?? null));
    this.door.take(event);
    const step = this.run.take({ ...event, at_ms, opensAsWritten: opensAfter(event, this) });
    this.recorded = { ...this.recorded, ...this.turnedBy.forRecord, events: [...this.recorded.events, step.event] };
    if (FIT_EVENTS.includes(event.type)) this.tray = this.layTray(null);
    this.told = toldOf(step, lockConsequences(event, this.lock, step.faults.length > 0, this.run.fitting));
    this.doors = [...this.doors, this.door.kept];
    this.keepAndShow();
    return true;
  }

  private doorAsKept(underWay: UnderWay | null): DoorWork {
    const door = underWay?.door ?? lastDoorOf(this.run, this.doors);
    const { fitting } = this.run;
    return new DoorWork(this.setup, this.shipped, door, underWay, fitting && fitOfRun(fitting));
  }

  private takeDoor(door: DoorWork): void {
    this.door = door;
    this.hand = this.takeHold();
  }

  /** The tray as the run has it, every change of which is kept at once. */
  private layTray(kept: KeptFitting | null): FittingSession | null {
    const tray = trayOfRun(this.run, kept, this.chance, this.tray?.help ?? this.setup.help);
    tray?.subscribe(() => this.keepAndShow());
    return tray;
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

  /** Shows another thing for the hand to do; from the ring one comes back to a lock that counts by what it learned. */
  show(activity: Activity): void {
    this.door.show(activity);
    this.changed();
  }

  /** Puts a change of combination under the hand, or takes it away. */
  takeChange(change: DoorChange | null): void {
    this.door.takeChange(change);
    this.keepAndShow();
  }

  /** Works at the change under way, and keeps what came of it. */
  workOnChange(does: (change: DoorChange) => void): void {
    if (this.change === null) return;
    does(this.change);
    this.keepAndShow();
  }

  /** Takes the run back to where it stood after some of the steps that count; the lock goes back with it. */
  goBackTo(steps: number): void {
    const before = trayBefore(this, steps);
    this.run.goBackTo(steps);
    const event = { type: "run.wentBack", steps, at_ms: this.recorded.events.at(-1)?.at_ms ?? 0 } as const;
    this.recorded = { ...this.recorded, events: [...this.recorded.events, event] };
    this.takeDoor(this.doorAsKept(null));
    this.tray = this.layTray(before);
    this.told = noted("You are back at that step. What came after it stays on record.");
    this.keepAndShow();
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

  private keepAndShow(): void {
    this.keepNow();
    this.changed();
  }

  /** Keeps the run with all that is under way. */
  keepNow(): void {
    const { doors, form, door, run } = this;
    const recorded = { ...this.recorded, ...this.turnedBy.forRecord };
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
}
