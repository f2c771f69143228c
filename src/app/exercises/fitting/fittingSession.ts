import { createActor } from "xstate";
import { type Assembly, inTheTray } from "../../../fitting/assembly";
import { type Fit, fitOf } from "../../../fitting/fit";
import { checkFit, type FitCheck, type FitObservation, hindranceTo } from "../../../fitting/fitCheck";
import { stageOf } from "../../../fitting/fitStage";
import { type LockToFit, lockToFit } from "../../../fitting/fittedLock";
import type { FittingAct } from "../../../fitting/fittingAct";
import { fittingMachine } from "../../../fitting/fittingMachine";
import { CENTERED, type Offset } from "../../../fitting/offCenter";
import { putTogether } from "../../../fitting/putTogether";
import type { Profile, Range } from "../../../lock/profile";
import type { Chance } from "../../../statistics/chance";
import { Store } from "../../parts/page/store";

/** How far off a strike may first hang, millimeters either way. */
const STRIKE_OFF_mm = 4;
/** How far a ring that is put on may be turned, graduations either way. */
const RING_TURNED = 3;

/** One spindle in three was dropped, and holds its dial as far off the axis, millimeters. */
const DROPPED = 1 / 3;
const BENT_mm: Range = [0.4, 0.7];

/** A dial that is fitted on the screen, part by part. A store outside React; how it goes on is the chart's. */
export class FittingSession extends Store {
  readonly profile: Profile;
  readonly chart = createActor(fittingMachine).start();
  lock: LockToFit;
  assembly: Assembly;
  /** What the checks showed since a part was last moved, latest first. */
  log: readonly FitObservation[] = [];
  private readonly chance: Chance;

  constructor(profile: Profile, chance: Chance) {
    super();
    this.profile = profile;
    this.chance = chance;
    this.lock = lockToFit(profile, chance);
    this.assembly = this.newTray();
  }

  /** What the lock comes to; null while it is not together. */
  get fit(): Fit | null {
    return fitOf(this.assembly, this.lock);
  }

  act(act: FittingAct): void {
    const { assembly, hindrance } = putTogether(this.assembly, act, this.lock);
    if (hindrance === null) {
      this.assembly = assembly;
      const isCover = act.type === "cover.put" || act.type === "cover.taken";
      if (!isCover) this.log = [];
      this.chart.send({ type: "part.moved", stage: stageOf(assembly, this.lock), isCover });
    } else {
      this.chart.send({ type: "part.stopped", by: hindrance });
    }
    this.changed();
  }

  /** Puts the ring on, by eye or over a bushing on the spindle. */
  putRing(isByBushing: boolean): void {
    const { bushingPlay_mm, ringPlay_mm } = this.lock.sizes;
    const turned = RING_TURNED * (2 * this.chance() - 1);
    const most_mm = isByBushing ? bushingPlay_mm : ringPlay_mm;
    this.act({ type: "ring.put", offset: this.anyWay([most_mm / 2, most_mm]), turned });
  }

  /** Hangs the strike by one screw, by eye. */
  hangStrike(): void {
    this.act({ type: "strike.hung", above_mm: STRIKE_OFF_mm * (2 * this.chance() - 1) });
  }

  check(kind: FitCheck): void {
    const { fit, assembly, lock, chance } = this;
    if (fit === null) return;
    const by = hindranceTo(kind, assembly);
    if (by === null) {
      this.log = [checkFit(kind, { fit, assembly, lock, chance }), ...this.log];
      this.chart.send({ type: "check.made", check: kind });
    } else {
      this.chart.send({ type: "part.stopped", by });
    }
    this.changed();
  }

  declare(): void {
    this.chart.send({ type: "fit.declared" });
    this.changed();
  }

  goOn(): void {
    this.chart.send({ type: "fit.reopened" });
    this.changed();
  }

  /** Another door, all parts in the tray. */
  again(): void {
    this.lock = lockToFit(this.profile, this.chance);
    this.assembly = this.newTray();
    this.log = [];
    this.chart.send({ type: "fitting.restarted" });
    this.changed();
  }

  private newTray(): Assembly {
    const bend = this.chance() < DROPPED ? this.anyWay(BENT_mm) : CENTERED;
    return inTheTray(this.lock.sizes.spindle_mm, bend);
  }

  /** A way off the middle in any direction. @param sizes - least and most, millimeters */
  private anyWay([least, most]: Range): Offset {
    const angle = 2 * Math.PI * this.chance();
    const size = least + (most - least) * this.chance();
    return { x_mm: size * Math.cos(angle), y_mm: size * Math.sin(angle) };
  }
}
