import { DeadBand } from "./deadBand";
import type { Sighting, SightReason } from "./sighting";

/** So near to the number on the screen, turns, a dial takes over. */
const NEAR = 0.005;
/** A dial that is not seen for so long is lost sight of, ms: a hand passes over it faster. */
const LOST_AFTER_MS = 300;
/** A dial that has just come apart is not looked at for so long, ms: what is on its way to the screen has to arrive. */
const SETTLED_AFTER_MS = 150;
/** A dial that turned farther than this between two frames, turns, may have gone either way. */
const FASTEST = 0.25;
/** Graduations of a turn, as sightings count them. */
const PER_TURN = 100;

/** What a frame comes to for the dial on the screen. */
export type Followed =
  /** It is turned to here: turns since the first take-over, left positive; null where this frame says nothing. */
  | { readonly state: "follows"; readonly turns: number | null; readonly hasComeBack: boolean }
  /** It is seen, but has to come to the number on the screen first. */
  | { readonly state: "apart" }
  | { readonly state: "lost"; readonly reason: SightReason };

/** Where an angle is from another, the shorter way, turns. */
const apart = (one: number, other: number) => one - other - Math.round(one - other);

/**
 * Lets a dial that a camera sees turn the one on the screen, only where both show one number: at the start, and again after
 * its turns could not be counted. So no count is ever guessed. Mutable.
 */
export class TakeOver {
  private readonly band = new DeadBand();
  private isApart = true;
  private hasFollowed = false;
  /** Where a dial that is apart was seen in the frame before, graduations. */
  private passing: number | null = null;
  private apart_ms = Number.NEGATIVE_INFINITY;
  private seen_ms = Number.NEGATIVE_INFINITY;
  /** What was told last, and what to add to a sighting's turns to tell it. */
  private told = 0;
  private offset = 0;

  /** @param screen - where the dial on the screen is, turns, left positive; null where there is none */
  take(sighting: Sighting, screen: number | null): Followed {
    const { at, position } = sighting;
    if (sighting.turnsInDoubt) this.loseCount(at);
    if (position === null) return this.unseen(sighting);
    this.seen_ms = at;
    if (this.isApart) return this.comeNear(position, at, screen);
    this.told = this.band.take(position, at) / PER_TURN + this.offset;
    return { state: "follows", turns: this.told, hasComeBack: false };
  }

  /** The dial on the screen is another, or was turned by something else: the two have to meet again. No turn is in doubt by that. */
  comeApart(): void {
    this.isApart = true;
    this.apart_ms = this.seen_ms;
    this.passing = null;
    this.hasFollowed = false;
  }

  private unseen({ at, reason }: Sighting): Followed {
    this.passing = null;
    if (at - this.seen_ms > LOST_AFTER_MS) return { state: "lost", reason };
    return this.isApart ? { state: "apart" } : { state: "follows", turns: null, hasComeBack: false };
  }

  private comeNear(position: number, at: number, screen: number | null): Followed {
    const off = screen === null ? 0 : apart(position / PER_TURN, screen);
    const by = this.passing === null ? 0 : (position - this.passing) / PER_TURN;
    this.passing = position;
    const hasPassed = Math.abs(by) < FASTEST && off * by > 0 && Math.abs(off) <= Math.abs(by);
    const isTooEarly = at < this.apart_ms + SETTLED_AFTER_MS;
    return isTooEarly || !(hasPassed || Math.abs(off) <= NEAR) ? { state: "apart" } : this.begin(position, at, off);
  }

  private loseCount(at: number): void {
    this.isApart = true;
    this.apart_ms = at;
    this.passing = null;
  }

  /** The dial on the screen comes to where the real one is, which was at its number just now. */
  private begin(position: number, at: number, off: number): Followed {
    const hasComeBack = this.hasFollowed;
    this.isApart = false;
    this.hasFollowed = true;
    this.told += off;
    this.offset = this.told - position / PER_TURN;
    this.band.reset();
    this.band.take(position, at);
    return { state: "follows", turns: this.told, hasComeBack };
  }
}
