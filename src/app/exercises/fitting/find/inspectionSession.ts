import { createActor } from "xstate";
import type { Help } from "../../../../dialing/advice";
import type { Assembly } from "../../../../fitting/assembly";
import { fitOf } from "../../../../fitting/fit";
import { checkFit, type FitCheck, type FitObservation } from "../../../../fitting/fitCheck";
import type { FitFault } from "../../../../fitting/fitFaultCode";
import { drawInspection, fitWith } from "../../../../fitting/inspect/drawFit";
import { faultsOn } from "../../../../fitting/inspect/faultDraws";
import { inspectionMachine } from "../../../../fitting/inspect/inspectionMachine";
import { type InspectionResult, inspectionResult } from "../../../../fitting/inspect/inspectionResult";
import type { Profile } from "../../../../lock/profile";
import { type Chance, seededChance } from "../../../../statistics/chance";
import { drawSeed } from "../../../../statistics/drawSeed";
import { TimedWork } from "../../../keeping/timedWork";
import type { BegunCheck } from "../instruments/workedCheck";

/** A lock that somebody else has fitted, to be judged by checks alone. A store outside React; how it goes on is the chart's. */
export class InspectionSession extends TimedWork {
  readonly profile: Profile;
  readonly chart = createActor(inspectionMachine).start();
  help: Help;
  /** What the checks showed, latest first. */
  log: readonly FitObservation[] = [];
  /** Faults that are ticked and not named yet. */
  ticked: readonly FitFault[] = [];
  /** The lock and what its checks show, with those made before; null where another's chance draws them. */
  seed: number | null;
  private readonly chance: Chance;
  private ofLock: Chance;
  private drawn: ReturnType<typeof drawInspection>;
  /** A fit with nothing wrong, on the same lock. */
  private good: Assembly;

  /** @param seed - of the first lock; `chance` itself draws it where left out, and the seed of every later one */
  constructor(profile: Profile, help: Help, chance: Chance, seed: number | null = null) {
    super();
    this.profile = profile;
    this.help = help;
    this.chance = chance;
    this.seed = seed;
    this.ofLock = seed === null ? chance : seededChance(seed);
    this.drawn = drawInspection(profile, this.ofLock);
    this.good = this.goodFit();
  }

  get lock() {
    return this.drawn.lock;
  }

  /** Whether the answer is given. */
  get isNamed(): boolean {
    return this.chart.getSnapshot().value === "named";
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
    this.begin(kind)?.take();
  }

  /** Begins a check with an instrument that a hand reads: it counts once it is taken. @returns null once the fit is judged */
  begin(kind: FitCheck): BegunCheck | null {
    const { assembly, lock } = this.drawn;
    const fit = fitOf(assembly, lock);
    if (fit === null || this.isNamed) return null;
    // Of its own for each check: what is begun and not taken, or begun again after a reload, shows the same.
    const chance = this.seed === null ? this.ofLock : seededChance(this.seed + 1 + this.log.length);
    const seen = checkFit(kind, { fit, assembly, lock, chance });
    const take = () => {
      this.log = [seen, ...this.log];
      this.chart.send({ type: "check.made", check: kind });
      this.changed();
    };
    return { seen, take };
  }

  /** Ticks what this lock can have; the rest is left out. */
  tick(faults: readonly FitFault[]): void {
    this.ticked = faultsOn(this.lock).filter((one) => faults.includes(one));
    this.changed();
  }

  /** Answers. @param faults - none to say that nothing is wrong */
  name(faults: readonly FitFault[]): void {
    this.chart.send({ type: "faults.named", faults });
    this.changed();
  }

  /** Another lock. */
  again(): void {
    this.seed = drawSeed(this.chance);
    this.ofLock = seededChance(this.seed);
    this.drawn = drawInspection(this.profile, this.ofLock);
    this.good = this.goodFit();
    this.log = [];
    this.ticked = [];
    this.begunAt = null;
    this.chart.send({ type: "inspection.restarted" });
    this.changed();
  }

  /** Other help, with another lock: what was seen with more help is not judged with less. */
  setHelp(help: Help): void {
    this.help = help;
    this.again();
  }

  private goodFit(): Assembly {
    return fitWith([], this.drawn.lock, this.ofLock).assembly;
  }
}
