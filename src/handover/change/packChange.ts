import { createActor } from "xstate";
import type { Attempt, HandledLock } from "../../dialing/attempt";
import type { DialingFact } from "../../dialing/dialingFact";
import type { Combination } from "../../lock/combination";
import type { Graduations, Milliseconds } from "../../lock/dial";
import type { WheelPackState } from "../../lock/wheelPackState";
import { type ActRefusal, type ChangeAct, ChangeInHand } from "./changeInHand";
import type { KeyedProfile } from "./changeProfile";
import { KeyedPack } from "./keyedPack";
import { type PackChangeState, packChangeMachine } from "./packChangeMachine";
import { Proof } from "./proof";
import { WatchedHand } from "./watchedHand";

/** What is kept of the key for the telling. */
interface KeyRecord {
  /** Of each ring from the port, when the key was turned. */
  turnedAt: readonly Graduations[] | null;
  /** Faults of the hand that dialed the new numbers are read from this. */
  newHand: HandledLock | null;
}

/** Where the wheels stand as the present step wants them, or do not; in other states that is of no matter. */
const STAND: Partial<Record<PackChangeState, boolean>> = {
  dialingPresent: false,
  presentStands: true,
  dialingNew: false,
  newStands: true,
};

/**
 * A change of combination with a key.
 *
 * What the lock is set to follows from the mechanics (`KeyedPack`). Until the key is out again the hand is read at the
 * changing index, afterwards at the opening index. Mutable.
 */
export class PackChange extends ChangeInHand<KeyedProfile> {
  readonly chart = createActor(packChangeMachine).start();
  readonly keyed: KeyedPack;
  readonly record: KeyRecord = { turnedAt: null, newHand: null };
  private indexed: WatchedHand;
  private readonly acts: Partial<Record<ChangeAct, () => ActRefusal | null>> = {
    insertKey: () => this.insertKey(),
    turnKey: () => this.turnKey(),
    turnKeyBack: () => this.turnKeyBack(),
    withdrawKey: () => this.withdrawKey(),
    changeAgain: () => this.changeAgain(),
    shutDoor: () => this.shutDoor(),
  };

  /**
   * @param start - where the pack stands
   * @throws {LockError} for a combination or a start that cannot be
   */
  constructor(profile: KeyedProfile, present: Combination, wanted: Combination, start?: WheelPackState) {
    super(profile, present, wanted);
    this.keyed = new KeyedPack(profile, present, start);
    this.indexed = this.handForPresent();
    this.look();
  }

  get hand(): HandledLock {
    return this.proof?.attempt ?? this.indexed;
  }

  get attempt(): Attempt | null {
    return this.proof?.attempt ?? null;
  }

  get dial(): Graduations {
    return this.proof?.attempt.dial ?? this.keyed.dial;
  }

  get retraction(): number {
    return this.proof?.attempt.retraction ?? this.keyed.pack.retraction;
  }

  /** As `KeyedPack`: null while the key is turned and for a spoiled pack. */
  get setCombination(): Combination | null {
    return this.keyed.setCombination;
  }

  /** Whether a forced key has spoiled the pack. */
  get isSpoiled(): boolean {
    return this.keyed.isSpoiled;
  }

  protected move(by: Graduations, now_ms: Milliseconds | undefined): readonly DialingFact[] {
    const before = this.indexed.pack?.errors() ?? [];
    this.keyed.turnBy(by);
    const facts = this.indexed.moved(this.atChangingIndex, before, now_ms);
    this.look();
    return facts;
  }

  protected does(act: ChangeAct): ActRefusal | null {
    return this.acts[act]?.() ?? null;
  }

  private insertKey(): ActRefusal | null {
    this.takePackBack();
    const refusal = this.keyed.insertKey();
    if (refusal !== null) return refusal;
    this.changeAgain();
    this.say({ type: "key.inserted" });
    return null;
  }

  /** Leaves the proofs, which then begin anew: the hand is read at the changing index, for what the lock is really set to. */
  private changeAgain(): null {
    if (this.proof === null) return null;
    this.takePackBack();
    this.proof = null;
    this.indexed = this.handForPresent();
    this.say({ type: "change.again" });
    this.look();
    return null;
  }

  /** Frees the hubs, or spoils the pack where rings stand away from the port. */
  private turnKey(): ActRefusal | null {
    const errors = this.keyed.keyErrors();
    const refusal = this.keyed.turnKey();
    if (refusal !== null) return refusal;
    this.record.turnedAt = errors;
    this.indexed = this.handForNew();
    const numbers = this.keyed.loose.map((k) => k + 1);
    this.say(this.isSpoiled ? { type: "pack.spoiled", numbers, errors } : { type: "key.turned" });
    this.look();
    return null;
  }

  /** Every ring is clamped to its hub where that stands. */
  private turnKeyBack(): ActRefusal | null {
    const refusal = this.keyed.turnKeyBack();
    if (refusal !== null) return refusal;
    this.record.newHand = this.indexed;
    this.say({ type: "key.turnedBack" });
    return null;
  }

  /** After a change the new combination can be tried from here on. */
  private withdrawKey(): ActRefusal | null {
    const refusal = this.keyed.withdrawKey();
    if (refusal !== null) return refusal;
    this.say({ type: "key.withdrawn" });
    const { dial, pack, setCombination } = this.keyed;
    if (this.isSet && setCombination !== null) {
      this.proof = new Proof(this.profile, this.wanted, setCombination, { dial, slack: pack.slack() });
    }
    return null;
  }

  /** Nobody shuts a door on a key. */
  private shutDoor(): ActRefusal | null {
    if (this.keyed.key !== "out") return "key-in-door";
    if (!this.isDoorShut) this.say({ type: "door.shut" });
    return null;
  }

  /** In a proof the attempt has the wheels: bring them back to where the key is. */
  private takePackBack(): void {
    const pack = this.proof?.attempt.pack;
    if (pack) this.keyed.restore({ ...this.keyed.state, pack: pack.state });
  }

  /** Says so when the wheels come to stand, or no longer stand, as the step wants them. */
  private look(): void {
    const stood = STAND[this.chart.getSnapshot().value];
    if (stood === undefined) return;
    const stands = this.keyed.standsFor(this.wanted);
    if (stands === null || stands === stood) return;
    const what = this.keyed.key === "turned" ? "new" : "present";
    this.say({ type: `${what}.${stands ? "stands" : "left"}` });
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
