import type { Combination } from "../../lock/combination";
import { parseCombination } from "../../lock/combination";
import { type Graduations, reading, wrap } from "../../lock/dial";
import { gateOffsets } from "../../lock/gateOffsets";
import { driven } from "../../lock/play";
import type { TrainEnd } from "../../lock/train/lockTrain";
import { WheelPack } from "../../lock/wheelPack";
import type { WheelPackState } from "../../lock/wheelPackState";
import type { KeyedProfile } from "./changeProfile";

/** Where the change key is: out of the lock, in the key port, or in it and turned. */
export type KeyPlace = "out" | "in" | "turned";

/** Why the key does not do what the hand wants. */
export type KeyRefusal = "bolt-drawn" | "not-in" | "already-in" | "already-turned" | "not-turned" | "pack-spoiled";

/** A pack that takes a key, at rest. */
export interface KeyedPackState {
  readonly pack: WheelPackState;
  /** What the gate rings are clamped to, graduations, wheel 1 first; those of loose rings mean nothing. */
  readonly numbers: Combination;
  readonly key: KeyPlace;
  /** Indices of the wheels whose rings a forced key has torn loose. */
  readonly loose: readonly number[];
}

/**
 * A wheel pack whose wheels are hubs with gate rings clamped to them, and the key that lets the rings go.
 *
 * The dial drives the hubs, by the play operators of `WheelPack`. The changing index stands `changing.index` left of the
 * opening index, so a hub whose number m is dialed to it stands at m + gate offset + index, and its gate `index` left of
 * the fence: there lies the key port. A key in the port holds the wheels; turned, it holds the rings, each drawn true to
 * the port, and frees the hubs. Turned back, it clamps every ring to its hub as that now stands, so the wheel's number
 * becomes hub - gate offset - index. A ring that stood farther from the port than the key tolerance is torn loose and is
 * clamped to no known place. Common practice, no source; tolerance and offset are training values. Mutable.
 */
export class KeyedPack implements TrainEnd<never> {
  readonly profile: KeyedProfile;
  /** The mechanics; replaced whenever the rings are clamped anew. */
  pack: WheelPack;
  key: KeyPlace = "out";
  /** Indices of the wheels whose rings are loose for good. */
  loose: readonly number[] = [];
  private readonly offsets: readonly Graduations[];

  /**
   * @param combination - what the pack is set to; numbers need not be whole
   * @param start - where it stands, key out; at rest at reading 0 where left out
   * @throws {LockError} for a combination or a start that cannot be
   */
  constructor(profile: KeyedProfile, combination: Combination, start?: WheelPackState) {
    this.profile = profile;
    this.offsets = gateOffsets(profile);
    this.pack = new WheelPack(profile, parseCombination(profile, combination), start);
  }

  /** An immutable picture of pack, rings and key. */
  get state(): KeyedPackState {
    return { pack: this.pack.state, numbers: this.pack.combination, key: this.key, loose: this.loose };
  }

  /**
   * Goes back to a picture.
   *
   * @throws {LockError} for a combination or a start that cannot be; nothing has changed then
   */
  restore({ pack, numbers, key, loose }: KeyedPackState): void {
    this.pack = new WheelPack(this.profile, parseCombination(this.profile, numbers), pack);
    this.key = key;
    this.loose = loose;
  }

  /** Unwrapped dial position, graduations. */
  get dial(): Graduations {
    return this.pack.dial;
  }

  /** Whether a forced key has spoiled the pack: it opens no more until it is taken apart and set anew. */
  get isSpoiled(): boolean {
    return this.loose.length > 0;
  }

  /** What opens the lock now, graduations; null while the key is turned, and for a spoiled pack. */
  get setCombination(): Combination | null {
    return this.isSpoiled || this.key === "turned" ? null : this.pack.combination;
  }

  /**
   * How far each gate ring stands from the key port, wheel 1 first.
   *
   * @returns graduations in (-half a turn, half a turn], left positive; all 0 while a turned key holds them
   */
  keyErrors(): Graduations[] {
    const { graduations, changing } = this.profile;
    const isHeld = this.key === "turned" && !this.isSpoiled;
    return this.pack.errors().map((error) => (isHeld ? 0 : wrap(error - changing.index, graduations)));
  }

  /** Indices of the wheels that stand too far from the key port. */
  unaligned(): number[] {
    const { keyTolerance } = this.profile.changing;
    return this.keyErrors().flatMap((error, k) => (Math.abs(error) > keyTolerance ? [k] : []));
  }

  /**
   * How far each gate stands from the fence, wheel 1 first: as `WheelPack.errors`, with the rings where the key holds
   * them.
   *
   * @returns graduations, left positive; loose rings lie where they were torn off and are told by `loose`
   */
  gateErrors(): Graduations[] {
    const { graduations, changing } = this.profile;
    return this.keyErrors().map((error) => wrap(error + changing.index, graduations));
  }

  /**
   * How far each hub stands from where it must stand to take a number, if the key were turned back now.
   *
   * @param wanted - the new combination
   * @returns graduations in (-half a turn, half a turn], left positive, wheel 1 first
   */
  hubErrors(wanted: Combination): Graduations[] {
    const { graduations, changing } = this.profile;
    return this.pack
      .stands()
      .map((stand, k) => wrap(stand - (wanted[k] ?? 0) - (this.offsets[k] ?? 0) - changing.index, graduations));
  }

  /**
   * Whether the wheels stand as the next act of the key wants them: the rings at the port, or, with the key turned, every
   * hub within its gate's tolerance of where the new combination wants it.
   *
   * @param wanted - the new combination
   * @returns null for a spoiled pack
   */
  standsFor(wanted: Combination): boolean | null {
    if (this.isSpoiled) return null;
    if (this.key !== "turned") return this.unaligned().length === 0;
    const { gateTolerance } = this.profile.wheelPack;
    return this.hubErrors(wanted).every((error, k) => Math.abs(error) <= (gateTolerance[k] ?? 0));
  }

  /**
   * Turns the dial. A key that is in, not turned, holds the wheels: the dial then has only the last wheel's play.
   *
   * @param by - graduations, left positive
   * @throws {LockError} `too-far`
   */
  turnBy(by: Graduations): readonly never[] {
    const isFree = this.key === "out" && !this.isSpoiled;
    if (isFree) this.pack.turnBy(by);
    else this.pack.turnHeldAside(this.key === "in" ? this.withinPlay(by) : by);
    return [];
  }

  /** What of a move the last wheel's play lets through while the wheels are held. */
  private withinPlay(by: Graduations): Graduations {
    const left = this.pack.slack().at(-1) ?? 0;
    const right = (this.profile.wheelPack.freePlay.at(-1) ?? 0) - left;
    return driven(by, 0, { right, left });
  }

  /** Puts the key in. It goes in however the wheels stand. @returns why it cannot, or null */
  insertKey(): KeyRefusal | null {
    if (this.key !== "out") return "already-in";
    // With the nose down the fence lies in the gates and keeps them from the port.
    if (this.pack.engagedAt !== null) return "bolt-drawn";
    this.key = "in";
    return null;
  }

  /** Turns the key; wheels that stand too far off are spoiled. @returns why it cannot be turned, or null */
  turnKey(): KeyRefusal | null {
    if (this.isSpoiled) return "pack-spoiled";
    if (this.key === "out") return "not-in";
    if (this.key === "turned") return "already-turned";
    this.loose = this.unaligned();
    this.key = "turned";
    return null;
  }

  /** Turns the key back, which clamps every ring to its hub where that now stands. @returns why not, or null */
  turnKeyBack(): KeyRefusal | null {
    if (this.key !== "turned") return this.key === "in" ? "not-turned" : "not-in";
    if (!this.isSpoiled) this.clamp();
    this.key = "in";
    return null;
  }

  /** Takes the key out. A turned key cannot be taken out. @returns why not, or null */
  withdrawKey(): KeyRefusal | null {
    if (this.key === "out") return "not-in";
    if (this.key === "turned") return "already-turned";
    this.key = "out";
    return null;
  }

  private clamp(): void {
    const { graduations, changing } = this.profile;
    const numbers = this.pack
      .stands()
      .map((stand, k) => reading(stand - (this.offsets[k] ?? 0) - changing.index, graduations));
    this.pack = new WheelPack(this.profile, numbers, this.pack.state);
  }
}
