import { takesKey } from "../../../handover/change/changeProfile";
import { EncoderChange } from "../../../handover/change/encoderChange";
import type { KeyPlace, KeyRefusal } from "../../../handover/change/keyedPack";
import { type KeyAnswer, PackChange } from "../../../handover/change/packChange";
import type { DoorLock } from "../../../handover/run/doorLock";
import type { Combination } from "../../../lock/combination";
import type { Graduations, Milliseconds } from "../../../lock/dial";
import type { Profile } from "../../../lock/profile";

const REFUSALS: Readonly<Record<KeyRefusal, string>> = {
  "bolt-drawn": "The bolt is back: the key does not go in. Throw it first.",
  "not-in": "The key is not in.",
  "already-in": "The key is in already.",
  "already-turned": "The key is turned already.",
  "not-turned": "The key is not turned.",
  "pack-spoiled": "The pack is spoiled. Take it apart.",
};

/** A change of combination by hand on the lock on the door. Mutable. */
export class DoorChange {
  readonly wanted: Combination;
  readonly change: PackChange | EncoderChange;
  /** What was told last. */
  words = "";
  private readonly lock: DoorLock;

  constructor(profile: Profile, lock: DoorLock, wanted: Combination) {
    this.wanted = wanted;
    this.lock = lock;
    const { dial, slack } = lock.kept;
    const present = lock.setTo ?? lock.meant;
    if (profile.kind === "dial-encoder") this.change = new EncoderChange(profile, present, wanted, { dial });
    else if (takesKey(profile)) {
      this.change = new PackChange(profile, present, wanted, { dial, slack: slack ?? [], engagedAt: null });
    } else throw new Error(`${profile.id} takes no change key`);
  }

  /** Whether it has come to an end: the key is out again, or both dialings agree. */
  get isDone(): boolean {
    const { change } = this;
    return change instanceof PackChange ? change.keyed.key === "out" && this.hasTurned : change.proof !== null;
  }

  /** Whether it can be left now: not while the key is in. */
  get canBeLeft(): boolean {
    return !(this.change instanceof PackChange) || this.change.keyed.key === "out";
  }

  /** What opens the lock now, or null for a spoiled pack. */
  get setTo(): Combination | null {
    return this.change.setCombination;
  }

  get key(): KeyPlace | null {
    return this.change instanceof PackChange ? this.change.keyed.key : null;
  }

  turnBy(by: Graduations, now: Milliseconds): void {
    const before = this.change.dial;
    this.lock.hand.turnBy(by);
    const facts = this.change.turnBy(by, now).change;
    this.lock.hand.holdBack(by - (this.change.dial - before));
    const last = facts.at(-1);
    if (last !== undefined && last.type in TOLD) this.words = TOLD[last.type] ?? "";
  }

  /** Does something with the key, or presses the change button. */
  use(what: "insertKey" | "turnKey" | "turnKeyBack" | "withdrawKey" | "pressButton"): void {
    const { change } = this;
    if (change instanceof EncoderChange) {
      this.words = change.pressButton().refusal === null ? PRESSED : "Nothing: the bolt must be back.";
      return;
    }
    if (what === "pressButton") return;
    const answer: KeyAnswer = change[what]();
    if (what === "turnKey" && answer.refusal === null) this.hasTurned = true;
    this.words = answer.refusal === null ? (TOLD[answer.facts[0]?.type ?? ""] ?? "") : REFUSALS[answer.refusal];
  }

  private hasTurned = false;
}

const PRESSED = "The lock takes new numbers: dial them twice.";

const TOLD: Readonly<Record<string, string>> = {
  "key.inserted": "The key is in.",
  "key.turned": "The key is turned: the wheels are free for new numbers.",
  "key.turnedBack": "The key is turned back: the wheels are clamped as they stand.",
  "key.withdrawn": "The key is out.",
  "pack.spoiled": "The key turned hard, and something gave.",
  "present.opened": "It opened. Press the change button now.",
  "present.refused": "It did not open.",
  "entry.taken": "Taken once. Dial the new numbers again.",
  "entry.refused": "Not taken: too few turns. Dial them again.",
  "entries.differed": "The two dialings differ. Nothing is changed; dial both again.",
  "entries.agreed": "Both dialings agree. It is changed.",
};
