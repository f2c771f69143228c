import { createActor } from "xstate";
import type { Help } from "../../../dialing/advice";
import type { Assembly } from "../../../fitting/assembly";
import { anyWay, type DoorToFit, drawDoor, trayAt } from "../../../fitting/doorToFit";
import { type Fit, fitOf } from "../../../fitting/fit";
import { checkFit, type FitCheck, type FitObservation, hindranceTo } from "../../../fitting/fitCheck";
import { voidedBy } from "../../../fitting/fitChecks";
import { stageOf } from "../../../fitting/fitStage";
import { type LockToFit, lockWith } from "../../../fitting/fittedLock";
import type { BoardTouch, FittingAct } from "../../../fitting/fittingAct";
import { fittingMachine } from "../../../fitting/fittingMachine";
import { CENTERED } from "../../../fitting/offCenter";
import { putTogether } from "../../../fitting/putTogether";
import { FITTING } from "../../../fitting/trainingValues";
import type { Profile } from "../../../lock/profile";
import { type Chance, seededChance } from "../../../statistics/chance";
import { TimedWork } from "../../keeping/timedWork";
import type { BegunCheck } from "./instruments/workedCheck";

/** Seeds of a check's spread are below. */
const SEEDS = 1_000_000;

/** A check that was made. */
interface MadeCheck {
  readonly after: number;
  readonly check: FitCheck;
  readonly seed: number;
}

const MOST_FIRST: readonly Help[] = ["full", "counts", "silent"];
const mostHelp = (...helps: readonly Help[]): Help => MOST_FIRST.find((help) => helps.includes(help)) ?? "full";

/** A dial that is fitted on the screen, part by part. A store outside React; how it goes on is the chart's. */
export class FittingSession extends TimedWork {
  readonly profile: Profile;
  readonly chart = createActor(fittingMachine).start();
  lock: LockToFit;
  assembly: Assembly;
  /** Everything done to the parts on this door, in order: with the door, the lock as it is. */
  acts: readonly FittingAct[] = [];
  /** What the checks showed since a part was last moved, latest first. */
  log: readonly FitObservation[] = [];
  help: Help;
  /** The most help that was had with this door. */
  helpHad: Help;
  /** Whether the debrief of this door has ever been open. */
  wasDeclared = false;
  /** All checks: after how many acts, and the seed of its instrument's spread. */
  checked: readonly MadeCheck[] = [];
  /** Where this door's parts began. */
  door: DoorToFit;
  private readonly chance: Chance;

  /** @param door - where the parts are to be put together; drawn where left out */
  constructor(profile: Profile, chance: Chance, door: DoorToFit = drawDoor(profile, chance), help: Help = "counts") {
    super();
    this.profile = profile;
    this.help = help;
    this.helpHad = help;
    this.chance = chance;
    this.door = door;
    this.lock = lockWith(profile, door.slotAt);
    this.assembly = trayAt(door, this.lock);
  }

  /** Goes on with a lock as it is. */
  static resumed(profile: Profile, chance: Chance, left: Pick<FittingSession, "lock" | "assembly">, help?: Help) {
    const { lock, assembly } = left;
    const session = new FittingSession(profile, chance, { slotAt: lock.slotAt, bend: CENTERED }, help);
    session.assembly = assembly;
    session.chart.send({ type: "part.moved", stage: stageOf(assembly, lock), voids: [] });
    return session;
  }

  /** What the lock comes to; null while it is not together. */
  get fit(): Fit | null {
    return fitOf(this.assembly, this.lock);
  }

  act(act: FittingAct): void {
    const { assembly, hindrance } = putTogether(this.assembly, act, this.lock);
    if (hindrance === null) {
      this.assembly = assembly;
      this.acts = [...this.acts, act];
      const voids = voidedBy(act);
      this.log = this.log.filter(({ kind }) => !voids.includes(kind));
      this.chart.send({ type: "part.moved", stage: stageOf(assembly, this.lock), voids });
    } else {
      this.chart.send({ type: "part.stopped", by: hindrance });
    }
    this.changed();
  }

  /** Puts the ring on, by eye or over a bushing on the spindle. */
  putRing(isByBushing: boolean): void {
    const { bushingPlay_mm, ringPlay_mm } = this.lock.sizes;
    const turned = FITTING.ringTurned * (2 * this.chance() - 1);
    const most_mm = isByBushing ? bushingPlay_mm : ringPlay_mm;
    this.act({ type: "ring.put", offset: anyWay([most_mm / 2, most_mm], this.chance), turned });
  }

  /** Hangs the strike by one screw, by eye. */
  hangStrike(): void {
    this.act({ type: "strike.hung", above_mm: FITTING.strikeOff_mm * (2 * this.chance() - 1) });
  }

  /** Does something to the board; chance says what a touch without the strap does. */
  touchBoard(touch: BoardTouch): void {
    this.act({ ...touch, luck: this.chance() });
  }

  check(kind: FitCheck): void {
    this.checkWith(kind, this.drawSeed());
  }

  /** Begins a check with an instrument that a hand reads: it counts once it is taken. @returns null where it cannot be made */
  begin(kind: FitCheck): BegunCheck | null {
    const seed = this.drawSeed();
    const seen = this.seenBy(kind, seed);
    this.changed();
    return seen && { seen, take: () => this.checkWith(kind, seed) };
  }

  /** Makes a check whose spread has a seed: the same again shows the same. */
  checkWith(kind: FitCheck, seed: number): void {
    const seen = this.seenBy(kind, seed);
    if (seen !== null) {
      this.log = [seen, ...this.log];
      this.checked = [...this.checked, { after: this.acts.length, check: kind, seed }];
      this.chart.send({ type: "check.made", check: kind });
    }
    this.changed();
  }

  /** What a check shows; null where the lock is not together or something stands in the way, which is then said. */
  private seenBy(kind: FitCheck, seed: number): FitObservation | null {
    const { fit, assembly, lock } = this;
    if (fit === null) return null;
    const stoppedBy = hindranceTo(kind, assembly);
    if (stoppedBy !== null) this.chart.send({ type: "part.stopped", by: stoppedBy });
    return stoppedBy === null ? checkFit(kind, { fit, assembly, lock, chance: seededChance(seed) }) : null;
  }

  /** A look from the side is a check, once: five eyes at the loupe are one look. */
  lookFromSide(): void {
    if (!this.log.some(({ kind }) => kind === "side")) this.check("side");
  }

  setHelp(help: Help): void {
    this.help = help;
    this.helpHad = mostHelp(help, this.helpHad);
    this.changed();
  }

  /**
   * Takes up checks that were made before, and made well: what lies under the cover by now was seen then.
   *
   * @param seeds - of their spread, in their order; drawn where left out
   */
  recall(checks: readonly FitCheck[], seeds: readonly number[] = []): void {
    const { fit, assembly, lock, acts } = this;
    if (fit === null) return;
    const made = checks.map((check, k) => ({ after: acts.length, check, seed: seeds[k] ?? this.drawSeed() }));
    this.checked = made;
    this.log = made
      .map(({ check, seed }) => checkFit(check, { fit, assembly, lock, chance: seededChance(seed) }))
      .reverse();
    for (const check of checks) this.chart.send({ type: "check.made", check });
  }

  private drawSeed(): number {
    return Math.floor(SEEDS * this.chance());
  }

  declare(): void {
    this.chart.send({ type: "fit.declared" });
    this.wasDeclared ||= this.chart.getSnapshot().value === "declared";
    this.changed();
  }

  goOn(): void {
    this.chart.send({ type: "fit.reopened" });
    this.changed();
  }

  /** Another door, all parts in the tray. */
  again(): void {
    this.door = drawDoor(this.profile, this.chance);
    this.lock = lockWith(this.profile, this.door.slotAt);
    this.assembly = trayAt(this.door, this.lock);
    this.acts = [];
    this.checked = [];
    this.log = [];
    this.begunAt = null;
    this.wasDeclared = false;
    this.helpHad = this.help;
    this.chart.send({ type: "fitting.restarted" });
    this.changed();
  }
}
