import { Attempt } from "../../../../dialing/attempt";
import { idealMotion } from "../../../../dialing/idealMotion";
import { HeldLock, type HoldbackRefusal } from "../../../../handover/holdback/heldLock";
import type { Graduations, Milliseconds } from "../../../../lock/dial";
import type { Profile } from "../../../../lock/profile";
import type { Chance } from "../../../../statistics/chance";
import { Store } from "../../../parts/page/store";
import { combinationAsSet } from "../../bench/benchSetup";

/** What there is to be done, in order. */
export const TASKS = ["set", "held", "pulled", "released", "spunOff"] as const;
export type Task = (typeof TASKS)[number];

const REFUSED: Readonly<Record<HoldbackRefusal, string>> = {
  "bolt-not-back": "The holdback does not move. Turn the dial to the positive stop first, so that the bolt is back.",
  "already-on": "The holdback is already set.",
  "already-off": "The holdback is already released.",
};

/** Turning against the slide that shows it cannot be spun off, part of a turn: a whole one but for the play. */
const TRIED_AFTER = 0.9;

/**
 * A lock that stands open, its holdback slide, and what has been shown with them.
 *
 * A store outside React.
 */
export class HoldbackSession extends Store {
  profile: Profile;
  lock: HeldLock;
  readonly done = new Set<Task>();
  /** What came of the last act, in a sentence. */
  told = "";
  private readonly chance: Chance;
  /** Turning that the held dial has not let through, graduations. */
  private swallowed: Graduations = 0;

  constructor(profile: Profile, chance: Chance) {
    super();
    this.profile = profile;
    this.chance = chance;
    this.lock = this.openLock();
  }

  /** The first thing still to be done, or null. */
  get next(): Task | null {
    return TASKS.find((task) => !this.done.has(task)) ?? null;
  }

  turnBy(by: Graduations, now: Milliseconds): void {
    if (by === 0) return;
    const before = this.lock.dial;
    const facts = this.lock.turnBy(by, now);
    const has = (type: string) => facts.some((fact) => fact.type === type);
    if (has("dial.held")) this.noteHeld(Math.abs(by) - Math.abs(this.lock.dial - before));
    if (has("lock.cleared") && this.done.has("released")) this.note("spunOff", "Spun off: the lock is secured.");
    this.changed();
  }

  slide(): void {
    const isOff = !this.lock.isHeld;
    const refusal = isOff ? this.lock.setHoldback() : this.lock.releaseHoldback();
    if (refusal !== null) this.told = REFUSED[refusal];
    else if (isOff) this.note("set", "The holdback is set: the bolt is held back.");
    else this.note("released", "The holdback is released: the dial moves the bolt again.");
    this.changed();
  }

  /** Pushes the door shut and pulls at it. */
  pull(): void {
    if (this.lock.locksDoor) this.told = "The door stays shut: the bolt is thrown.";
    else if (this.lock.isHeld)
      this.note("pulled", "The door opens when you pull it: a bolt that is held back locks nothing.");
    else this.told = "The door opens when you pull it: the bolt is back.";
    this.changed();
  }

  takeLock(profile: Profile): void {
    this.profile = profile;
    this.again();
  }

  again(): void {
    this.lock = this.openLock();
    this.done.clear();
    this.swallowed = 0;
    this.told = "";
    this.changed();
  }

  private noteHeld(by: Graduations): void {
    this.swallowed += by;
    const isTried = this.swallowed >= TRIED_AFTER * this.profile.graduations;
    if (isTried) this.note("held", "The dial is blocked. While the bolt is held back, you cannot spin the lock off.");
    else this.told = "The dial is blocked. Try to turn it a whole turn.";
  }

  /** Done counts only in its turn: what is shown must be shown on a held lock. */
  private note(task: Task, told: string): void {
    const isInTurn = task === "set" || this.done.has("set");
    if (isInTurn) this.done.add(task);
    this.told = told;
  }

  /** A lock opened by a perfect hand, its dial at the positive stop. */
  private openLock(): HeldLock {
    const { profile } = this;
    const combination = combinationAsSet(profile, this.chance);
    const attempt = new Attempt(profile, combination, { dial: 0 });
    for (const stop of idealMotion(profile, combination, 0).slice(1)) attempt.turnBy(stop - attempt.dial);
    return new HeldLock(attempt);
  }
}
