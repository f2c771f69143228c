import type { Attempt } from "../../../dialing/attempt";
import { motionText } from "../../../records/motion/traceCodec";
import { type GrowingAttempt, TELLING_LIMITS } from "../../../school/wire/liveWire";
import { type Dialed, ownProfileOf } from "./workHere";

/** Least time from one telling of a motion to its next, ms: at most ten a second. */
const PAUSE_MS = 100;
/** Letters a millisecond that a bench sends for long: a long motion, which is told as a whole, is told less often. */
const LETTERS_PER_MS = 20;

/** Tells the motion of the attempt under the hand as it grows: whole, since it packs to a few thousand letters. Mutable. */
export class AttemptTeller {
  private readonly made = new WeakMap<Attempt, Pick<GrowingAttempt, "id" | "startedAt">>();
  private readonly newId: () => string;
  private told: { readonly attempt: Attempt; readonly moves: number; readonly isEnded: boolean } | null = null;
  private next_ms = 0;

  /** @param newId - makes an id that nothing else has */
  constructor(newId: () => string) {
    this.newId = newId;
  }

  /** Whoever hears it has heard nothing yet. */
  forget(): void {
    this.told = null;
  }

  /**
   * What is to be told now of the attempt under the hand.
   *
   * @param now - milliseconds since 1970
   * @param steady_ms - the same moment by a clock that only goes on
   * @returns undefined for nothing new, or not yet; null where what was told must not be kept
   */
  next(dialed: Dialed | null, now: number, steady_ms: number): GrowingAttempt | null | undefined {
    if (dialed === null) return undefined;
    if (!dialed.turnedBy.mayKeepMotion) return this.takenBack(dialed.attempt);
    return this.isDue(dialed, steady_ms) ? this.telling(dialed, now, steady_ms) : undefined;
  }

  /** Whether it has grown, and it is time to say so. The end is told at once, before the state that says so. */
  private isDue({ attempt, motion, isEnded }: Dialed, steady_ms: number): boolean {
    const before = this.told?.attempt === attempt ? this.told : { moves: 0, isEnded: false };
    const isOver = isEnded && !before.isEnded;
    return motion.positions.length > before.moves && (isOver || steady_ms >= this.next_ms);
  }

  private telling(
    { attempt, motion, isEnded, turnedBy }: Dialed,
    now: number,
    steady_ms: number,
  ): GrowingAttempt | undefined {
    const text = motionText(motion);
    this.told = { attempt, moves: motion.positions.length, isEnded };
    this.next_ms = steady_ms + Math.max(PAUSE_MS, text.length / LETTERS_PER_MS);
    if (text.length > TELLING_LIMITS.motion) return undefined;
    const startedAt = Math.round(now - (motion.times_ms?.at(-1) ?? 0));
    const first = this.made.get(attempt) ?? { id: this.newId(), startedAt };
    this.made.set(attempt, first);
    const { profile, combination } = attempt;
    const { sources } = turnedBy.forRecord;
    return {
      ...first,
      profileId: profile.id,
      ...ownProfileOf(attempt),
      combination: [...combination],
      ...(sources && { sources }),
      motion: text,
    };
  }

  private takenBack(attempt: Attempt): null | undefined {
    if (this.told?.attempt !== attempt) return undefined;
    this.told = null;
    return null;
  }
}
