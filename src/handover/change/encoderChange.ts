import { Attempt, type HandledLock } from "../../dialing/attempt";
import { type AttemptStart, startAfter } from "../../dialing/attemptStart";
import type { DialingFact } from "../../dialing/dialingFact";
import { PROOFS_WANTED } from "../../drill/marking/jobRule";
import { type Combination, parseCombination } from "../../lock/combination";
import type { Graduations, Milliseconds } from "../../lock/dial";
import type { DialEncoderProfile } from "../../lock/profile";
import type { EncoderChangeFact } from "./changeFact";
import { agree, type Entry, EntryReader } from "./encoderEntry";
import type { ChangeMove } from "./packChange";
import { Proof } from "./proof";
import { WatchedHand } from "./watchedHand";

/** Why the change button does nothing: the bolt is not back, or the lock is already taking new numbers. */
export type ButtonRefusal = "bolt-out" | "already-pressed";

/**
 * A change of combination on the dial of an encoder lock, under one hand.
 *
 * The present combination opens the lock; the change button inside the door is pressed while the bolt is back; the new
 * one is dialed twice; then it is tried. The lock takes as numbers the graduations nearest to the stops of the first
 * dialing, when those of the second lie within the stop tolerance; else nothing is changed and both are dialed again.
 * Own practice: common practice, no source. Mutable.
 */
export class EncoderChange {
  readonly profile: DialEncoderProfile;
  readonly present: Combination;
  readonly wanted: Combination;
  /** What opens the lock now. */
  setCombination: Combination;
  /** Tries of the new combination; null until it is set. */
  proof: Proof | null = null;
  /** The first of the two dialings, once the lock has taken it. */
  firstEntry: Combination | null = null;
  /** The dialings that last differed, or null. */
  differed: readonly [Combination, Combination] | null = null;
  /** Tries of the present combination that the lock refused. */
  presentRefused = 0;
  isDoorShut = false;
  private opening: Attempt;
  private entries: EntryReader | null = null;
  /** The hand that dials the new numbers, read as one that means them. */
  private entering: WatchedHand | null = null;

  /**
   * @param present - what the lock is set to, and known to be
   * @param wanted - the new combination
   * @throws {LockError} `bad-combination`, `too-far`
   */
  constructor(profile: DialEncoderProfile, present: Combination, wanted: Combination, start: AttemptStart) {
    this.profile = profile;
    this.present = parseCombination(profile, present);
    this.wanted = parseCombination(profile, wanted);
    this.setCombination = this.present;
    this.opening = new Attempt(profile, this.present, start);
  }

  /** The lock under the hand: the attempt with the present combination, or the try of the new one. */
  get attempt(): Attempt {
    return this.proof?.attempt ?? this.opening;
  }

  /** The hand as it is read now. */
  get hand(): HandledLock {
    return this.proof?.attempt ?? this.entering ?? this.opening;
  }

  /** Unwrapped dial position, graduations. */
  get dial(): Graduations {
    return this.attempt.dial;
  }

  /** How far the bolt is drawn back, 0 to 1. */
  get retraction(): number {
    return this.attempt.retraction;
  }

  /** Whether the lock is set anew, well or badly. */
  get isSet(): boolean {
    return this.proof !== null;
  }

  /** Openings in a row that prove the new combination so far: a refusal begins the count again. */
  get proofs(): number {
    return this.proof?.inRow ?? 0;
  }

  /** Whether the new combination has opened the lock as often as is asked before the door is shut. */
  get isProved(): boolean {
    return this.proofs >= PROOFS_WANTED;
  }

  /**
   * Turns the dial.
   *
   * @param by - graduations, left positive, one direction
   * @param now_ms - time, or undefined where the motion has no times
   * @throws {LockError} `too-far`
   */
  turnBy(by: Graduations, now_ms?: Milliseconds): ChangeMove<EncoderChangeFact> {
    if (this.proof !== null) {
      const { facts, ended } = this.proof.turnBy(by, now_ms);
      return { dialing: facts, change: ended === null ? [] : [{ type: `proof.${ended}` }] };
    }
    const dialing = this.opening.turnBy(by, now_ms);
    if (this.entries === null) return { dialing, change: this.judgePresent(dialing) };
    const read = this.entering?.moved(this.dial, [], now_ms) ?? [];
    const entry = this.entries.moveTo(this.dial, this.firstEntry);
    if (entry !== null) this.watchEntry(this.entries.begunAt);
    return { dialing: read, change: entry === null ? [] : this.take(entry) };
  }

  /** Presses the change button inside the door. @returns what happened, or why nothing does */
  pressButton(): { readonly facts: readonly EncoderChangeFact[]; readonly refusal: ButtonRefusal | null } {
    if (this.entries !== null) return { facts: [], refusal: "already-pressed" };
    if (this.retraction < 1 || this.proof !== null) return { facts: [], refusal: "bolt-out" };
    this.entries = new EntryReader(this.profile, this.dial);
    this.watchEntry(this.dial);
    return { facts: [{ type: "button.pressed" }], refusal: null };
  }

  /** Shuts the door. @returns nothing where it is shut */
  shutDoor(): readonly EncoderChangeFact[] {
    if (this.isDoorShut) return [];
    this.isDoorShut = true;
    return [{ type: "door.shut" }];
  }

  private judgePresent(facts: readonly DialingFact[]): readonly EncoderChangeFact[] {
    const has = (type: DialingFact["type"]) => facts.some((fact) => fact.type === type);
    if (has("bolt.retracted")) return [{ type: "present.opened" }];
    if (has("draw.refused")) {
      this.presentRefused += 1;
      return [{ type: "present.refused" }];
    }
    if (!has("bolt.thrown")) return [];
    this.opening = new Attempt(this.profile, this.present, startAfter(this.opening));
    return [{ type: "present.closed" }];
  }

  private watchEntry(from: Graduations): void {
    this.entering = new WatchedHand(this.profile, this.wanted, from, null);
    this.entering.moved(this.dial, [], undefined);
  }

  private take(entry: Entry): readonly EncoderChangeFact[] {
    if ("refusedAt" in entry) return [{ type: "entry.refused", number: entry.refusedAt }];
    if (this.firstEntry === null) {
      this.firstEntry = entry.numbers;
      return [{ type: "entry.taken" }];
    }
    const first = this.firstEntry;
    if (!agree(this.profile, first, entry.numbers)) {
      this.differed = [first, entry.numbers];
      this.firstEntry = null;
      return [{ type: "entries.differed" }];
    }
    return this.set(first);
  }

  private set(numbers: Combination): readonly EncoderChangeFact[] {
    this.setCombination = numbers;
    this.entries = null;
    this.differed = null;
    this.proof = new Proof(this.profile, this.wanted, numbers, startAfter(this.opening));
    return [{ type: "entries.agreed" }];
  }
}
