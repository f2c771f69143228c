import { createActor } from "xstate";
import type { Profile } from "../lock/profile";
import { type Chance, seededChance } from "../statistics/chance";
import { changed } from "./changeLock";
import { drawVisit, type VisitTask } from "./drawVisit";
import { looked, measured, tryOpening, type VisitObservation } from "./measure";
import type { ServicedLock } from "./servicedLock";
import { instrumentsFor, isChange, looksFor, type VisitAct, type VisitHindrance } from "./visitAct";
import { visitMachine } from "./visitMachine";
import { type WrongThing, wrongNow } from "./wrongThing";

/** An act that was done, and how things were when it was. */
export interface DoneAct {
  readonly act: VisitAct;
  readonly showed: VisitObservation | null;
  readonly isHeld: boolean;
  readonly hasStrap: boolean;
  /** What was wrong with the lock before it. */
  readonly wrong: readonly WrongThing[];
}

/** Acts on what is inside the door: the door must be open. */
const INSIDE: readonly VisitAct["type"][] = ["door.held", "door.shut", "cover.taken", "cover.put", "bolt.wiped"];
/** Changes to what is under the cover. */
const UNDER_COVER: readonly VisitAct["type"][] = [
  "screw.tightened",
  "key.replaced",
  "bearing.replaced",
  "ring.centered",
  "lubricated",
  "batteries.replaced",
];

const needsOpenDoor = (act: VisitAct): boolean =>
  INSIDE.includes(act.type) ||
  (act.type === "looked" && (act.at === "bolt" || act.at === "way-out")) ||
  isUnderCover(act);

const isUnderCover = (act: VisitAct): boolean =>
  UNDER_COVER.includes(act.type) ||
  (act.type === "measured" && (act.with === "key" || act.with === "battery")) ||
  (act.type === "looked" && act.at === "case");

function lacksPart(act: VisitAct, { kind }: ServicedLock): boolean {
  switch (act.type) {
    case "looked":
      return !looksFor(kind).includes(act.at);
    case "measured":
      return !instrumentsFor(kind).includes(act.with);
    case "batteries.replaced":
      return kind === "wheel-pack";
    case "section.read":
      return act.section === "batteries" && kind === "wheel-pack";
    case "lubricated":
      return act.at === "wheels" && kind === "electronic";
    default:
      return false;
  }
}

/** A visit to one lock, act by act. Mutable; what was done stays done. */
export class Visit {
  readonly task: VisitTask;
  /** The lock as it is now. */
  lock: ServicedLock;
  readonly done: DoneAct[] = [];
  readonly chart = createActor(visitMachine).start();
  private isHeld = false;
  private hasStrap = false;
  private readonly chance: Chance;

  constructor(task: VisitTask, chance: Chance) {
    this.task = task;
    this.lock = task.lock;
    this.chance = chance;
  }

  get isOpen(): boolean {
    const { value } = this.chart.getSnapshot();
    return value === "open" || value === "disturbed" || value === "proved";
  }

  get isOver(): boolean {
    return this.chart.getSnapshot().value === "left";
  }

  /** Does an act, unless something is in its way: then the chart says what. A visit that is over takes none. */
  act(act: VisitAct): void {
    if (this.isOver) return;
    const by = this.hindrance(act);
    if (by !== null) {
      this.chart.send({ type: "act.stopped", by });
      return;
    }
    const before = { isHeld: this.isHeld, hasStrap: this.hasStrap, wrong: this.wrong };
    const showed = this.carryOut(act);
    this.done.push({ act, showed, ...before });
    this.tell(act, showed);
  }

  /** Leaves the site. */
  leave(): void {
    this.chart.send({ type: "visit.ended" });
  }

  /** All that is wrong with the lock now. */
  get wrong(): readonly WrongThing[] {
    return wrongNow(this.lock, this.task.instructions);
  }

  private hindrance(act: VisitAct): VisitHindrance | null {
    const { hasCover } = this.lock.assembly;
    if (lacksPart(act, this.lock)) return "no-such-part";
    if (needsOpenDoor(act) && !this.isOpen) return "door-is-shut";
    if (isUnderCover(act) && hasCover) return "cover-in-the-way";
    return this.isSoAlready(act) ? "is-so-already" : null;
  }

  private isSoAlready({ type }: VisitAct): boolean {
    const { hasCover } = this.lock.assembly;
    switch (type) {
      case "door.opened":
        return this.isOpen;
      case "door.held":
        return this.isHeld;
      case "cover.taken":
        return !hasCover;
      case "cover.put":
        return hasCover;
      default:
        return false;
    }
  }

  private carryOut(act: VisitAct): VisitObservation | null {
    const { lock, chance } = this;
    switch (act.type) {
      case "door.held":
        this.isHeld = true;
        return null;
      case "door.shut":
        this.isHeld = false;
        return null;
      case "strap.worn":
        this.hasStrap = true;
        return null;
      case "cover.taken":
      case "cover.put":
        this.lock = { ...lock, assembly: { ...lock.assembly, hasCover: act.type === "cover.put" } };
        return null;
      case "looked":
        return looked(act.at, lock);
      case "measured":
        return measured(act.with, lock, chance);
      case "tried":
        return tryOpening(lock, chance);
      default:
        if (isChange(act)) this.lock = changed(lock, act, this.task.instructions);
        return null;
    }
  }

  private tell(act: VisitAct, showed: VisitObservation | null): void {
    const disturbs = isChange(act) || act.type === "cover.taken" || act.type === "cover.put";
    if (showed?.kind === "try") this.chart.send({ type: "try.made", opened: showed.opened });
    else if (act.type === "door.opened" || act.type === "door.shut") this.chart.send({ type: act.type });
    else this.chart.send({ type: disturbs ? "lock.disturbed" : "act.done" });
  }
}

/** A visit as it begins, the same for the same lock and seed. */
export const visitTo = (profile: Profile, seed: number): Visit =>
  new Visit(drawVisit(profile, seed), seededChance(seed + 1));
