import { beginChange, type Change } from "../../../../../handover/change/change";
import { PackChange } from "../../../../../handover/change/packChange";
import type { DoorLock } from "../../../../../handover/run/doorLock";
import type { Combination } from "../../../../../lock/combination";
import type { Graduations, Milliseconds } from "../../../../../lock/dial";
import type { Profile } from "../../../../../lock/profile";
import { type RefusedAct, refusedWords } from "../../change/changeWords";
import { DeedList, type KeptChange, type KeyAct } from "./changeDeeds";

/** A change of combination by hand on the lock on the door. Mutable. */
export class DoorChange {
  readonly wanted: Combination;
  readonly change: Change;
  private readonly lock: DoorLock;
  private readonly begun: Pick<KeptChange, "hand" | "lock">;
  private readonly done = new DeedList();
  /** What happened last, and why the last act did nothing where it did nothing. */
  private happened: string | null = null;
  private refused: RefusedAct | null = null;

  /**
   * @param start - where the lock takes the dial and its wheels to be; as they are where left out
   * @throws {LockError} for a combination or a start that cannot be
   */
  constructor(profile: Profile, lock: DoorLock, wanted: Combination, start: KeptChange["lock"] = startOf(lock)) {
    this.wanted = wanted;
    this.lock = lock;
    this.begun = { hand: lock.hand.dial, lock: start };
    this.change = beginChange(profile, lock.setTo ?? lock.meant, wanted, start);
  }

  /**
   * Goes on with a change that was kept: the hand does again what it has done.
   *
   * @throws {LockError} as the constructor, where what was kept is no change on this lock
   */
  static resume(profile: Profile, lock: DoorLock, kept: KeptChange): DoorChange {
    lock.hand.turnBy(kept.hand - lock.hand.dial);
    const change = new DoorChange(profile, lock, kept.wanted, kept.lock);
    for (const deed of kept.deeds) {
      if ("use" in deed) change.use(deed.use);
      else change.turnBy(deed.by, deed.at_ms);
    }
    change.done.reloaded();
    return change;
  }

  /** The change as it stands, to be kept. */
  get kept(): KeptChange {
    return { wanted: [...this.wanted], ...this.begun, deeds: this.done.deeds };
  }

  /** What was told last. @param isOnce - whether an act in vain is told as the hand feels it, and no advice with it */
  words(isOnce: boolean): string {
    if (this.refused !== null) return refusedWords(this.refused, isOnce);
    return this.happened === null ? "" : (TOLD[this.happened] ?? "");
  }

  /** Whether it has come to an end: the key is out again, or both dialings agree. */
  get isDone(): boolean {
    const { change } = this;
    return change instanceof PackChange
      ? change.keyed.key === "out" && change.record.turnedAt !== null
      : change.proof !== null;
  }

  /** Whether it can be left now: not while the key is in. */
  get canBeLeft(): boolean {
    return !(this.change instanceof PackChange) || this.change.keyed.key === "out";
  }

  /** What opens the lock now, or null for a spoiled pack. */
  get setTo(): Combination | null {
    return this.change.setCombination;
  }

  /** Turns the dial. @returns whether something came of it */
  turnBy(by: Graduations, now: Milliseconds): boolean {
    const { change, lock } = this;
    const { dial, state } = change;
    const at_ms = this.done.at(now);
    lock.hand.turnBy(by);
    const last = this.tell(change.turnBy(by, at_ms));
    lock.hand.holdBack(by - (change.dial - dial));
    const hasCome = last !== undefined || change.state !== state;
    this.done.turned(by, at_ms, hasCome);
    this.refused = null;
    return hasCome;
  }

  /** Does something with the key, or presses the change button. */
  use(act: KeyAct): void {
    const { facts, refusal } = this.change.act(act);
    this.done.used(act);
    this.refused = null;
    this.tell(facts);
    if (refusal !== null) this.refuse(refusal);
  }

  /** Tells why an act does nothing. */
  refuse(why: RefusedAct): void {
    this.refused = why;
    this.happened = null;
  }

  /** @returns the last of the facts that there are words for */
  private tell(facts: readonly Fact[]): Fact | undefined {
    const last = facts.findLast(({ type }) => type in TOLD);
    if (last !== undefined) this.happened = last.type;
    return last;
  }
}

/** Something that came of an act or a turn. */
interface Fact {
  readonly type: string;
}

/** Where the lock takes its dial and its wheels to be. */
function startOf({ kept: { dial, slack } }: DoorLock): KeptChange["lock"] {
  return { dial, ...(slack && { slack: [...slack] }) };
}

const TOLD: Readonly<Record<string, string>> = {
  "key.inserted": "The key is in.",
  "key.turned": "The key is turned: the wheels are free for the new numbers.",
  "key.turnedBack": "The key is turned back: the wheels are clamped where they are.",
  "key.withdrawn": "The key is out.",
  "pack.spoiled": "The key turned hard, and something gave.",
  "button.pressed": "The lock is ready for the new numbers: dial them twice.",
  "present.opened": "It opened. Press the change button now.",
  "present.refused": "It did not open.",
  "entry.taken": "First entry accepted. Dial the new numbers again.",
  "entry.refused": "Entry not accepted: too few turns. Dial them again.",
  "entries.differed": "The two entries differ. Nothing is changed. Dial both again.",
  "entries.agreed": "Both entries agree. The combination is changed.",
};
