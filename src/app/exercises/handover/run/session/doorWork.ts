import type { Help } from "../../../../../dialing/advice";
import type { DialWeight } from "../../../../../dialing/hand/dialFeel";
import type { UnderHand } from "../../../../../dialing/hand/handSession";
import type { Fit } from "../../../../../fitting/fit";
import type { RunPlan } from "../../../../../handover/run/begunRun";
import { DoorLock, type LockHappening } from "../../../../../handover/run/doorLock";
import { opensAsWritten } from "../../../../../handover/run/lockProbe";
import type { HandoverEvent } from "../../../../../handover/run/rules/handoverEvent";
import type { Combination } from "../../../../../lock/combination";
import type { Graduations, Milliseconds, Position } from "../../../../../lock/dial";
import type { ZeroingSession } from "../../../zeroing/session/zeroingSession";
import { DoorChange } from "./doorChange";
import { doorZeroing, keptDoor, learnedBy } from "./doorZeroing";
import type { KeptDoor, UnderWay } from "./keptRun";

/** How long the moves of a change wait to be kept: a browser that is killed loses these. */
export const KEEP_EVERY: Milliseconds = 500;

/** What a run is set up for. */
export interface RunSetup extends RunPlan {
  /** How the dial turns; as it should where left out. */
  readonly weight?: DialWeight | undefined;
  /** What the gauges tell while the lock is fitted; what they show, without limits, where left out. */
  readonly help?: Help | undefined;
}

/** What the hand on the dial is doing. */
export type Activity = "dial" | "ring" | "change";

/** What came of a turn: what the lock did, or that a change of its combination has come a step further. */
export type DoorHappening = LockHappening | "changed";

/** The lock on the door with all that a hand can be at: its dial, its ring, a change of its combination. Mutable. */
export class DoorWork implements UnderHand<DoorHappening> {
  readonly zeroing: ZeroingSession;
  readonly lock: DoorLock;
  change: DoorChange | null = null;
  activity: Activity = "dial";
  private readonly shipped: Combination;

  /**
   * @param shipped - what the lock is set to as it comes
   * @param door - as it was kept; as it comes where left out
   * @param fit - as it was made in the run; null where the lock came on its door, or is in parts
   * @param underWay - what the hand was at when the page went, or null
   * @throws {LockError} where what was under way does not fit the lock
   */
  constructor(
    { profile, seed }: RunSetup,
    shipped: Combination,
    door: KeptDoor | undefined,
    underWay: UnderWay | null,
    fit: Fit | null = null,
  ) {
    this.shipped = shipped;
    this.zeroing = doorZeroing(profile, seed, door, fit, underWay?.hand);
    const kept = door?.lock ?? { meant: shipped, setTo: shipped, dial: 0, isOpen: false, isHeld: false };
    const isDead = fit !== null && fit.selfCheck !== "passes";
    this.lock = new DoorLock(profile, this.zeroing.lock, kept, learnedBy(this.zeroing), isDead);
    if (underWay?.isAtRing) this.activity = "ring";
    if (underWay?.change) this.takeChange(DoorChange.resume(profile, this.lock, underWay.change));
  }

  get dial(): Position {
    return this.lock.hand.dial;
  }

  turnBy(by: Graduations, at: Milliseconds): readonly DoorHappening[] {
    if (this.change === null) return this.lock.turnBy(by, at);
    // What is kept of a change has no rests: its times tell them.
    return by !== 0 && this.change.turnBy(by, at) ? ["changed"] : [];
  }

  /** The same lock taken off its door and put on again: its wheels are as they were, its bolt is out, its ring loose. */
  refitted(setup: RunSetup, fit: Fit | null): DoorWork {
    const lock = { ...this.kept.lock, isOpen: false, isHeld: false };
    const door = { lock, ringTurn: 0, isClamped: false, accepted: { right: [], left: [] } };
    return new DoorWork(setup, this.shipped, door, null, fit);
  }

  /** Lock, ring and zero, to be kept. */
  get kept(): KeptDoor {
    return keptDoor(this.lock, this.zeroing);
  }

  /** What the hand is at, to be kept. */
  get underWay(): UnderWay {
    const { activity, change, kept } = this;
    return { door: kept, hand: this.dial, isAtRing: activity === "ring", change: change?.kept ?? null };
  }

  /** Whether the combination as written opens it now. */
  get opensAsWritten(): boolean {
    return opensAsWritten(this.lock, learnedBy(this.zeroing));
  }

  /** What an act does to the lock, besides what a hand has done already. */
  take({ type }: HandoverEvent): void {
    if (type === "holdback.set") this.lock.setHoldback();
    if (type === "holdback.released") this.lock.releaseHoldback();
    if (type === "pack.rebuilt") this.lock.set(this.shipped, this.shipped);
  }

  /** Shows another thing for the hand to do; from the ring one comes back to a lock that counts by what it learned. */
  show(activity: Activity): void {
    if (this.activity === "ring") this.lock.learn(learnedBy(this.zeroing));
    this.activity = activity;
  }

  /** Puts a change of combination under the hand, or takes it away. */
  takeChange(change: DoorChange | null): void {
    this.change = change;
    this.activity = change === null ? "dial" : "change";
  }
}
