import type { Attempt } from "../../dialing/attempt";
import type { DialingFact } from "../../dialing/dialingFact";
import { type CamPosition, type Graduations, type Milliseconds, signOf } from "../../lock/dial";
import { exact } from "../../lock/exact";
import { driven } from "../../lock/play";
import type { Profile } from "../../lock/profile";
import type { BoltEnd } from "../../lock/train/heavyDraw";

/** How far a dial gives between the positive stop and a bolt that is held back, graduations; a training value. */
export const HOLDBACK_PLAY: Graduations = 0.5;

/** Why the holdback slide does not move. */
export type HoldbackRefusal = "bolt-not-back" | "already-on" | "already-off";

/** What happened to a lock with a holdback. */
export type HoldbackFact =
  | { readonly type: "holdback.set" }
  | { readonly type: "holdback.released" }
  /** The slide did not move. */
  | { readonly type: "holdback.refused"; readonly why: HoldbackRefusal }
  /** The hand turned against the held bolt. `by`: as much was not let through, graduations. */
  | { readonly type: "dial.held"; readonly by: Graduations };

/** Where the nose of a wheel pack may next drop: strictly beyond a place in the direction of the draw, graduations. */
function nextEngagement({ draw, graduations }: Profile, dial: Graduations): CamPosition {
  const sign = signOf(draw.turn);
  const along = exact(sign * (dial - draw.engageAt));
  return exact(draw.engageAt + sign * graduations * (Math.floor(along / graduations) + 1));
}

/**
 * A lock with a holdback slide, which keeps its bolt back once the dial stands at the positive stop.
 *
 * While the slide is on, the bolt stays back and holds the dial: it gives no more than `HOLDBACK_PLAY` and cannot be spun
 * off, so the lock still stands at its combination, and the door does not lock. Off again, it is the lock it was. Common
 * practice, no source. Mutable; it owns the motion of the attempt it is given.
 */
export class HeldLock implements BoltEnd<DialingFact | HoldbackFact> {
  readonly attempt: Attempt;
  /** Whether the slide is on. */
  isHeld = false;
  /** How far the dial gives way from where the lock stands, against the draw, graduations in [0, `HOLDBACK_PLAY`]. */
  private give: Graduations = 0;

  constructor(attempt: Attempt) {
    this.attempt = attempt;
  }

  /** Unwrapped dial position, graduations. */
  get dial(): Graduations {
    return this.attempt.dial - this.drawSign * this.give;
  }

  /** How far the bolt is drawn back, 0 to 1; 1 while it is held. */
  get retraction(): number {
    return this.attempt.retraction;
  }

  /** Where the dial takes hold of the bolt; an encoder lock's motor does so only once the draw is judged. */
  get takesBoltAt(): CamPosition | null {
    const { pack, profile, dial } = this.attempt;
    return pack === null ? null : (pack.engagedAt ?? nextEngagement(profile, dial));
  }

  /** Whether the bolt moves with a dial that goes on from where it stands. @param by - graduations, left positive */
  movesBolt(by: Graduations): boolean {
    return !this.isHeld && this.attempt.isCoupled && (this.retraction > 0 || by * this.drawSign > 0);
  }

  /** Whether the door would stay shut: only a thrown bolt locks it. */
  get locksDoor(): boolean {
    return this.attempt.retraction === 0;
  }

  /** Sets the slide, where it moves. */
  setHoldback(): readonly HoldbackFact[] {
    if (this.isHeld) return [{ type: "holdback.refused", why: "already-on" }];
    if (this.attempt.retraction < 1) return [{ type: "holdback.refused", why: "bolt-not-back" }];
    this.isHeld = true;
    return [{ type: "holdback.set" }];
  }

  /** Takes the slide off, where it moves; the bolt follows to where the dial has given way. */
  releaseHoldback(): readonly (DialingFact | HoldbackFact)[] {
    if (!this.isHeld) return [{ type: "holdback.refused", why: "already-off" }];
    this.isHeld = false;
    const { give } = this;
    this.give = 0;
    return [{ type: "holdback.released" }, ...(give > 0 ? this.attempt.turnBy(-this.drawSign * give) : [])];
  }

  /**
   * Turns the dial; what a held bolt or a positive stop does not let through is lost.
   *
   * @param by - graduations, left positive, one direction
   * @param now_ms - time, or undefined where the motion has no times
   * @returns what the lock did; nothing while it is held
   * @throws {LockError} `too-far`
   */
  turnBy(by: Graduations, now_ms?: Milliseconds): readonly (DialingFact | HoldbackFact)[] {
    if (!this.isHeld) return this.attempt.turnBy(by, now_ms);
    const wanted = this.give - this.drawSign * by;
    this.give = driven(wanted, 0, { right: 0, left: this.play });
    return wanted > this.play ? [{ type: "dial.held", by: wanted - this.play }] : [];
  }

  /** Never so much that releasing the slide would throw the bolt. */
  private get play(): Graduations {
    return Math.min(HOLDBACK_PLAY, this.attempt.profile.draw.travel / 2);
  }

  private get drawSign(): 1 | -1 {
    return signOf(this.attempt.profile.draw.turn);
  }
}
