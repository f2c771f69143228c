import { createActor } from "xstate";
import { Attempt, type HandledLock } from "../../dialing/attempt";
import type { AttemptStart } from "../../dialing/attemptStart";
import type { DialingFact } from "../../dialing/dialingFact";
import { nextAttempt } from "../../dialing/nextAttempt";
import type { Combination } from "../../lock/combination";
import type { Graduations, Milliseconds } from "../../lock/dial";
import type { DialEncoderProfile } from "../../lock/profile";
import { type ActRefusal, type ChangeAct, ChangeInHand } from "./changeInHand";
import { encoderChangeMachine } from "./encoderChangeMachine";
import { agree, type Entry, EntryReader } from "./encoderEntry";
import { Proof } from "./proof";
import { WatchedHand } from "./watchedHand";

/**
 * A change of combination on the dial of an encoder lock.
 *
 * The present combination opens the lock; the change button inside the door is pressed while the bolt is back; the new
 * one is dialed twice; then it is tried. The lock takes as numbers the graduations nearest to the stops of the first
 * dialing, when those of the second lie within the stop tolerance; else nothing is changed and both are dialed again.
 * Own practice: common practice, no source. Mutable.
 */
export class EncoderChange extends ChangeInHand<DialEncoderProfile> {
  readonly chart = createActor(encoderChangeMachine).start();
  setCombination: Combination;
  /** The first of the two dialings, once the lock has taken it. */
  firstEntry: Combination | null = null;
  /** The dialings that last differed, or null. */
  differed: readonly [Combination, Combination] | null = null;
  /** Tries of the present combination that the lock refused. */
  presentRefused = 0;
  private opening: Attempt;
  private entries: EntryReader | null = null;
  /** The hand that dials the new numbers, read as one that means them. */
  private entering: WatchedHand | null = null;

  /** @throws {LockError} for a combination or a position that cannot be */
  constructor(profile: DialEncoderProfile, present: Combination, wanted: Combination, start: AttemptStart) {
    super(profile, present, wanted);
    this.setCombination = this.present;
    this.opening = new Attempt(profile, this.present, start);
  }

  /** The lock under the hand: the attempt with the present combination, or the try of the new one. */
  get attempt(): Attempt {
    return this.proof?.attempt ?? this.opening;
  }

  get hand(): HandledLock {
    return this.proof?.attempt ?? this.entering ?? this.opening;
  }

  get dial(): Graduations {
    return this.attempt.dial;
  }

  get retraction(): number {
    return this.attempt.retraction;
  }

  protected move(by: Graduations, now_ms: Milliseconds | undefined): readonly DialingFact[] {
    const dialing = this.opening.turnBy(by, now_ms);
    if (this.entries === null) {
      this.judgePresent(dialing, now_ms);
      return dialing;
    }
    const read = this.entering?.moved(this.dial, [], now_ms) ?? [];
    const entry = this.entries.moveTo(this.dial, this.firstEntry);
    if (entry === null) return read;
    this.watchEntry(this.entries.begunAt);
    this.take(entry);
    return read;
  }

  protected does(act: ChangeAct): ActRefusal | null {
    if (act === "pressButton") return this.pressButton();
    if (act === "shutDoor" && !this.isDoorShut) this.say({ type: "door.shut" });
    return null;
  }

  private pressButton(): ActRefusal | null {
    if (this.entries !== null) return "already-pressed";
    if (this.retraction < 1 || this.proof !== null) return "bolt-out";
    this.entries = new EntryReader(this.profile, this.dial);
    this.watchEntry(this.dial);
    this.say({ type: "button.pressed" });
    return null;
  }

  private judgePresent(facts: readonly DialingFact[], now_ms: Milliseconds | undefined): void {
    const has = (type: DialingFact["type"]) => facts.some((fact) => fact.type === type);
    if (has("bolt.retracted")) this.say({ type: "present.opened" });
    else if (has("draw.refused")) {
      this.presentRefused += 1;
      this.say({ type: "present.refused" });
    } else if (has("bolt.thrown")) {
      this.opening = nextAttempt(this.opening, this.present, {}, now_ms);
      this.say({ type: "present.closed" });
    }
  }

  private watchEntry(from: Graduations): void {
    this.entering = new WatchedHand(this.profile, this.wanted, from, null);
    this.entering.moved(this.dial, [], undefined);
  }

  private take(entry: Entry): void {
    if ("refusedAt" in entry) this.say({ type: "entry.refused", number: entry.refusedAt });
    else if (this.firstEntry === null) {
      this.firstEntry = entry.numbers;
      this.say({ type: "entry.taken" });
    } else if (agree(this.profile, this.firstEntry, entry.numbers)) this.set(this.firstEntry);
    else {
      this.differed = [this.firstEntry, entry.numbers];
      this.firstEntry = null;
      this.say({ type: "entries.differed" });
    }
  }

  private set(numbers: Combination): void {
    this.setCombination = numbers;
    this.entries = null;
    this.differed = null;
    this.proof = new Proof(this.profile, this.wanted, numbers, { dial: this.dial, memory: this.opening.memory });
    this.say({ type: "entries.agreed" });
  }
}
