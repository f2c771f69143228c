import { createActor } from "xstate";
import type { Help } from "../../../../dialing/advice";
import type { Assembly } from "../../../../fitting/assembly";
import { fitOf } from "../../../../fitting/fit";
import { checkFit, type FitCheck, type FitObservation } from "../../../../fitting/fitCheck";
import type { FitFault } from "../../../../fitting/fitFault";
import { drawInspection, fitWith } from "../../../../fitting/inspect/drawFit";
import { inspectionMachine } from "../../../../fitting/inspect/inspectionMachine";
import { type InspectionResult, inspectionResult } from "../../../../fitting/inspect/inspectionResult";
import type { Profile } from "../../../../lock/profile";
import type { Chance } from "../../../../statistics/chance";
import { Store } from "../../../parts/page/store";

/** A lock that somebody else has fitted, to be judged by checks alone. A store outside React; how it goes on is the chart's. */
export class InspectionSession extends Store {
  readonly profile: Profile;
  readonly chart = createActor(inspectionMachine).start();
  help: Help;
  /** What the checks showed, latest first. */
  log: readonly FitObservation[] = [];
  private readonly chance: Chance;
  private drawn: ReturnType<typeof drawInspection>;
  /** A fit with nothing wrong, on the same lock. */
  private good: Assembly;

  constructor(profile: Profile, help: Help, chance: Chance) {
    super();
    this.profile = profile;
    this.help = help;
    this.chance = chance;
    this.drawn = drawInspection(profile, chance);
    this.good = this.goodFit();
  }

  get lock() {
    return this.drawn.lock;
  }

  /** As it was fitted; what of it may be shown, its checks tell. */
  get assembly(): Assembly {
    return this.drawn.assembly;
  }

  /** For comparison: nothing of the lock at hand is in it. */
  get goodExample(): Assembly {
    return this.good;
  }

  /** What it comes to as it stands. */
  get result(): InspectionResult {
    const { named, checks } = this.chart.getSnapshot().context;
    return inspectionResult(this.drawn, named, checks);
  }

  /** Makes a check: the cover comes off for it where it must, and goes back as it was. */
  check(kind: FitCheck): void {
    const { assembly, lock } = this.drawn;
    const fit = fitOf(assembly, lock);
    if (fit === null || this.chart.getSnapshot().value === "named") return;
    this.log = [checkFit(kind, { fit, assembly, lock, chance: this.chance }), ...this.log];
    this.chart.send({ type: "check.made", check: kind });
    this.changed();
  }

  /** Answers. @param faults - none to say that nothing is wrong */
  name(faults: readonly FitFault[]): void {
    this.chart.send({ type: "faults.named", faults });
    this.changed();
  }

  /** Another lock. */
  again(): void {
    this.drawn = drawInspection(this.profile, this.chance);
    this.good = this.goodFit();
    this.log = [];
    this.chart.send({ type: "inspection.restarted" });
    this.changed();
  }

  /** Other help, with another lock: what was seen with more help is not judged with less. */
  setHelp(help: Help): void {
    this.help = help;
    this.again();
  }

  private goodFit(): Assembly {
    return fitWith([], this.drawn.lock, this.chance).assembly;
  }
}
