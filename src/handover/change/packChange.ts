import type { Attempt, HandledLock } from "../../dialing/attempt";
import type { DialingFact } from "../../dialing/dialingFact";
import { PROOFS_WANTED } from "../../drill/marking/jobRule";
import { type Combination, parseCombination } from "../../lock/combination";
import type { Graduations, Milliseconds } from "../../lock/dial";
import type { WheelPackState } from "../../lock/wheelPackState";
import type { PackChangeFact } from "./changeFact";
import type { KeyedProfile } from "./changeProfile";
import { KeyedPack, type KeyedPackState, type KeyRefusal } from "./keyedPack";
import { Proof } from "./proof";
import { WatchedHand } from "./watchedHand";

/** What a move brought: to the reading of the hand, and to the change. */
export interface ChangeMove<Fact> {
  readonly dialing: readonly DialingFact[];
  readonly change: readonly Fact[];
}

/** What the key answered: a fact, or why it would not. */
export type KeyAnswer =
  | { readonly facts: readonly PackChangeFact[]; readonly refusal: null }
  | { readonly facts: readonly []; readonly refusal: KeyRefusal };

/** What is kept of the key for the telling. */
interface KeyRecord {
  /** Of each ring from the port, when the key was turned. */
  turnedAt: readonly Graduations[] | null;
  /** Faults of the hand that dialed the new numbers are read from this. */
  newHand: HandledLock | null;
}

/**
 * A change of combination with a key, from the present one to the proofs of the new one, under one hand.
 *
 * The present and the new combination are what the trainee means; what the lock is set to follows from the mechanics
 * (`KeyedPack`). Until the key is out again the hand is read at the changing index, afterwards at the opening index.
 * Mutable.
 */
export class PackChange {
  readonly profile: KeyedProfile;
  readonly present: Combination;
  readonly wanted: Combination;
  readonly keyed: KeyedPack;
  /** Tries of the new combination; null until the key is out after a change. */
  proof: Proof | null = null;
  /** Whether the door has been shut. */
  isDoorShut = false;
  readonly record: KeyRecord = { turnedAt: null, newHand: null };
  private indexed: WatchedHand;
  private hasChanged = false;
  /** Whether the wheels stand as the present step wants them; null while that is of no matter. */
  private stood: boolean | null = false;

  /**
   * @param present - what the lock is set to, and known to be
   * @param wanted - the new combination
   * @param start - where the pack stands
   * @throws {LockError} `bad-combination`, `bad-start`, `too-far`
   */
  constructor(profile: KeyedProfile, present: Combination, wanted: Combination, start?: WheelPackState) {
    this.profile = profile;
    this.present = parseCombination(profile, present);
    this.wanted = parseCombination(profile, wanted);
    this.keyed = new KeyedPack(profile, present, start);
    this.indexed = this.handForPresent();
    this.stood = this.keyed.standsFor(this.wanted);
  }

  /** The hand as it is read now: at the changing index, or in the try under way. */
  get hand(): HandledLock {
    return this.proof?.attempt ?? this.indexed;
  }

  /** The try under way at the opening index, or null before the key is out. */
  get attempt(): Attempt | null {
    return this.proof?.attempt ?? null;
  }

  /** Unwrapped dial position, graduations. */
  get dial(): Graduations {
    return this.proof?.attempt.dial ?? this.keyed.dial;
  }

  /** How far the bolt is drawn back, 0 to 1. */
  get retraction(): number {
    return this.proof?.attempt.retraction ?? this.keyed.pack.retraction;
  }

  /** What opens the lock now, graduations; null while the key is turned and for a spoiled pack. */
  get setCombination(): Combination | null {
    return this.keyed.setCombination;
  }

  /** Whether a forced key has spoiled the pack. */
  get isSpoiled(): boolean {
    return this.keyed.isSpoiled;
  }

  /** Whether the lock is set anew, well or badly; the key may still be in. */
  get isSet(): boolean {
    return this.hasChanged && this.setCombination !== null;
  }

  /** Openings in a row that prove the new combination so far: a refusal begins the count again. */
  get proofs(): number {
    return this.proof?.inRow ?? 0;
  }

  /** An immutable picture of pack, rings and key. The reading of the hand is not in it. */
  get state(): KeyedPackState {
    this.takePackBack();
    return this.keyed.state;
  }

  /**
   * Turns the dial.
   *
   * @param by - graduations, left positive, one direction; what key or stop do not let through is lost
   * @param now_ms - time, or undefined where the motion has no times
   * @throws {LockError} `too-far`
   */
  turnBy(by: Graduations, now_ms?: Milliseconds): ChangeMove<PackChangeFact> {
    if (this.proof !== null) return this.turnInProof(this.proof, by, now_ms);
    const before = this.indexed.pack?.errors() ?? [];
    this.keyed.turnBy(by);
    return { dialing: this.indexed.moved(this.atChangingIndex, before, now_ms), change: this.standing() };
  }

  /** Puts the key in. */
  insertKey(): KeyAnswer {
    this.takePackBack();
    const answer = this.answer(this.keyed.insertKey(), { type: "key.inserted" });
    return answer.refusal === null ? { ...answer, facts: [...this.changeAgain(), ...answer.facts] } : answer;
  }

  /**
   * Leaves the proofs, which then begin anew: the hand is read at the changing index, for what the lock is really set to.
   */
  changeAgain(): readonly PackChangeFact[] {
    if (this.proof === null) return [];
    this.takePackBack();
    this.proof = null;
    this.indexed = this.handForPresent();
    this.stood = false;
    return [{ type: "change.again" }, ...this.standing()];
  }

  /** Turns the key: frees the hubs, or spoils the pack where rings stand away from the port. */
  turnKey(): KeyAnswer {
    const errors = this.keyed.keyErrors();
    const refusal = this.keyed.turnKey();
    if (refusal !== null) return { facts: [], refusal };
    this.record.turnedAt = errors;
    this.indexed = this.handForNew();
    if (this.isSpoiled) {
      this.stood = null;
      const numbers = this.keyed.loose.map((k) => k + 1);
      return { facts: [{ type: "pack.spoiled", numbers, errors }], refusal: null };
    }
    this.stood = false;
    return { facts: [{ type: "key.turned" }, ...this.standing()], refusal: null };
  }

  /** Turns the key back: every ring is clamped to its hub where that stands. */
  turnKeyBack(): KeyAnswer {
    const answer = this.answer(this.keyed.turnKeyBack(), { type: "key.turnedBack" });
    if (answer.refusal === null) {
      this.hasChanged = true;
      this.record.newHand = this.indexed;
      this.stood = null;
    }
    return answer;
  }

  /** Takes the key out. After a change the new combination can be tried from here on. */
  withdrawKey(): KeyAnswer {
    const answer = this.answer(this.keyed.withdrawKey(), { type: "key.withdrawn" });
    if (answer.refusal !== null || this.isSpoiled) return answer;
    const { dial, pack, setCombination } = this.keyed;
    if (this.hasChanged && setCombination !== null) {
      this.proof = new Proof(this.profile, this.wanted, setCombination, { dial, slack: pack.slack() });
      return answer;
    }
    this.stood = this.keyed.standsFor(this.wanted);
    return answer;
  }

  /** Shuts the door. Nobody shuts a door on a key. @returns nothing where the key is in */
  shutDoor(): readonly PackChangeFact[] {
    if (this.keyed.key !== "out" || this.isDoorShut) return [];
    this.isDoorShut = true;
    return [{ type: "door.shut" }];
  }

  /** Whether the new combination has opened the lock as often as is asked before the door is shut. */
  get isProved(): boolean {
    return this.proofs >= PROOFS_WANTED;
  }

  private turnInProof(proof: Proof, by: Graduations, now_ms: Milliseconds | undefined): ChangeMove<PackChangeFact> {
    const { facts, ended } = proof.turnBy(by, now_ms);
    return { dialing: facts, change: ended === null ? [] : [{ type: `proof.${ended}` }] };
  }

  private answer(refusal: KeyRefusal | null, fact: PackChangeFact): KeyAnswer {
    return refusal === null ? { facts: [fact], refusal } : { facts: [], refusal };
  }

  /** In a proof the attempt has the wheels: bring them back to where the key is. */
  private takePackBack(): void {
    const pack = this.proof?.attempt.pack;
    if (pack) this.keyed.restore({ ...this.keyed.state, pack: pack.state });
  }

  /** Says so when the wheels come to stand, or no longer stand, as the step wants them. */
  private standing(): readonly PackChangeFact[] {
    const { stood } = this;
    const { key } = this.keyed;
    if (stood === null || key === "in") return [];
    const stands = this.keyed.standsFor(this.wanted);
    if (stands === stood) return [];
    this.stood = stands;
    const what = key === "turned" ? "new" : "present";
    return [{ type: `${what}.${stands ? "stands" : "left"}` }];
  }

  /** What the changing index reads, unwrapped graduations. */
  private get atChangingIndex(): Graduations {
    return this.keyed.dial - this.profile.changing.index;
  }

  private handForPresent(): WatchedHand {
    const { combination } = this.keyed.pack;
    return new WatchedHand(this.profile, combination, this.atChangingIndex, () => this.keyed.keyErrors());
  }

  private handForNew(): WatchedHand {
    return new WatchedHand(this.profile, this.wanted, this.atChangingIndex, () => this.keyed.hubErrors(this.wanted));
  }
}
