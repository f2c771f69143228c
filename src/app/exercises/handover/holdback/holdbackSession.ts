import { type ActorRefFrom, createActor } from "xstate";
import { Attempt } from "../../../../dialing/attempt";
import { HandSession } from "../../../../dialing/hand/handSession";
import { idealMotion } from "../../../../dialing/idealMotion";
import { HeldLock } from "../../../../handover/holdback/heldLock";
import {
  type HoldbackContext,
  type HoldbackEvent,
  type HoldbackTask,
  holdbackMachine,
  nextTask,
} from "../../../../handover/holdback/holdbackMachine";
import type { Profile } from "../../../../lock/profile";
import type { Chance } from "../../../../statistics/chance";
import { HandStore } from "../../../hand/handStore";
import { combinationAsSet } from "../../bench/benchSetup";
import { TOLD } from "./holdbackWords";

export { HOLDBACK_TASKS as TASKS, type HoldbackTask as Task } from "../../../../handover/holdback/holdbackMachine";

/** A lock opened by a perfect hand, its dial at the positive stop. */
function openLock(profile: Profile, chance: Chance): HeldLock {
  const combination = combinationAsSet(profile, chance);
  const attempt = new Attempt(profile, combination, { dial: 0 });
  for (const stop of idealMotion(profile, combination, 0).slice(1)) attempt.turnBy(stop - attempt.dial);
  return new HeldLock(attempt);
}

/**
 * A lock that stands open and its holdback slide, under a hand.
 *
 * A store outside React.
 */
export class HoldbackSession extends HandStore {
  profile: Profile;
  lock: HeldLock;
  protected hand: HandSession<HoldbackEvent>;
  private chart: ActorRefFrom<ReturnType<typeof holdbackMachine>>;
  private readonly chance: Chance;

  constructor(profile: Profile, chance: Chance) {
    super();
    this.profile = profile;
    this.chance = chance;
    this.lock = openLock(profile, chance);
    this.chart = createActor(holdbackMachine(profile.graduations)).start();
    this.hand = new HandSession<HoldbackEvent>(this.lock, { chart: this.chart });
  }

  /** What has been shown, and what came of the last act. */
  get memory(): HoldbackContext {
    return this.chart.getSnapshot().context;
  }

  get next() {
    return nextTask(this.memory);
  }

  get done(): ReadonlySet<HoldbackTask> {
    return new Set(this.memory.done);
  }

  get told(): string {
    const { told } = this.memory;
    return told === null ? "" : TOLD[told];
  }

  slide(): void {
    const isOff = !this.lock.isHeld;
    const why = isOff ? this.lock.setHoldback() : this.lock.releaseHoldback();
    if (why === null) this.chart.send({ type: isOff ? "holdback.set" : "holdback.released" });
    else this.chart.send({ type: "holdback.refused", why });
    this.changed();
  }

  /** Pushes the door shut and pulls at it. */
  pull(): void {
    this.chart.send({ type: "door.pulled", isLocked: this.lock.locksDoor });
    this.changed();
  }

  takeLock(profile: Profile): void {
    this.profile = profile;
    this.again();
  }

  again(): void {
    this.lock = openLock(this.profile, this.chance);
    this.chart = createActor(holdbackMachine(this.profile.graduations)).start();
    this.hand = new HandSession<HoldbackEvent>(this.lock, { chart: this.chart });
    this.changed();
  }
}
