import type { AttemptStart } from "../../../../../dialing/attemptStart";
import { beginChange, type Change } from "../../../../../handover/change/change";
import { PackChange } from "../../../../../handover/change/packChange";
import type { DoorLock } from "../../../../../handover/run/doorLock";
import type { Combination } from "../../../../../lock/combination";
import type { Graduations, Milliseconds } from "../../../../../lock/dial";
import type { Profile } from "../../../../../lock/profile";
import { type RefusedAct, refusedWords, SOMETHING_GAVE } from "../../change/changeWords";
import { ChangeRecording, type KeptChange, type KeyAct, motionOfChange } from "./changeRecording";

/** A change of combination by hand on the lock on the door. Mutable. */
export class DoorChange {
  readonly wanted: Combination;
  readonly change: Change;
  private readonly lock: DoorLock;
  private readonly begunAt: Graduations;
  private readonly recording: ChangeRecording;
  /** What happened last, and why the last act did nothing where it did nothing. */
  private happened: string | null = null;
  private refused: RefusedAct | null = null;

  /**
   * @param start - where the lock takes the dial and its wheels to be; as they are where left out
   * @throws {LockError} for a combination or a start that cannot be
   */
  constructor(profile: Profile, lock: DoorLock, wanted: Combination, start: AttemptStart = startOf(lock)) {
    this.wanted = wanted;
    this.lock = lock;
    this.begunAt = lock.hand.dial;
    this.recording = new ChangeRecording(start);
    this.change = beginChange(profile, lock.setTo ?? lock.meant, wanted, start);
  }

  /**
   * Goes on with a change that was kept: the hand does again what it has done.
   *
   * @throws {LockError} as the constructor, where what was kept is no change on this lock
   */
  static resume(profile: Profile, lock: DoorLock, kept: KeptChange): DoorChange {
    lock.hand.turnBy(kept.hand - lock.hand.dial);
    const { start, positions, times_ms } = motionOfChange(kept.motion);
    const change = new DoorChange(profile, lock, kept.wanted, start);
    for (let k = 0; k <= positions.length; k++) {
      for (const { use } of kept.acts.filter(({ after }) => after === k)) change.use(use);
      const [from, to] = [positions[k - 1] ?? start.dial, positions[k]];
      if (to !== undefined) change.turnBy(to - from, times_ms[k] ?? 0);
    }
    change.recording.reloaded();
    return change;
  }

  /** The change as it stands, to be kept. */
  get kept(): KeptChange {
    return { wanted: [...this.wanted], hand: this.begunAt, ...this.recording.kept };
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
    const at_ms = this.recording.at(now);
    const kept = this.recording.turned(by, at_ms);
    lock.hand.turnBy(kept);
    const last = this.tell(change.turnBy(kept, at_ms));
    lock.hand.holdBack(kept - (change.dial - dial));
    this.refused = null;
    return last !== undefined || change.state !== state;
  }

  /** Does something with the key, or presses the change button. */
  use(act: KeyAct): void {
    const { facts, refusal } = this.change.act(act);
    this.recording.used(act);
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
function startOf({ kept: { dial, slack } }: DoorLock): AttemptStart {
  return { dial, ...(slack && { slack: [...slack] }) };
}

const TOLD: Readonly<Record<string, string>> = {
  "key.inserted": "The key is in.",
  "key.turned": "The key is turned: the wheels are free for the new numbers.",
  "key.turnedBack": "The key is turned back: the wheels are clamped where they are.",
  "key.withdrawn": "The key is out.",
  "pack.spoiled": SOMETHING_GAVE,
  "button.pressed": "The lock is ready for the new numbers: dial them twice.",
  "present.opened": "It opened. Press the change button now.",
  "present.refused": "It did not open.",
  "entry.taken": "First entry accepted. Dial the new numbers again.",
  "entry.refused": "Entry not accepted: too few turns. Dial them again.",
  "entries.differed": "The two entries differ. Nothing is changed. Dial both again.",
  "entries.agreed": "Both entries agree. The combination is changed.",
};
