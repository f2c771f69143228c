import type { Combination } from "../../lock/combination";
import type { Graduations } from "../../lock/dial";
import type { Profile } from "../../lock/profile";

/** What can be the matter with the lock on the trouble bench. */
export const TROUBLE_KINDS = [
  "index-slipped",
  "lost-motion",
  "wheel-off",
  "dial-heavy",
  "gates-tight",
  "gates-wide",
  "last-excluded",
  "zero-never-set",
  "zero-one-side",
  "pause-short",
  "ring-off-center",
  "wrong-keyway",
  "key-not-seated",
  "end-play",
  "dial-rubs",
] as const;

/** What is the matter. */
export type TroubleKind = (typeof TROUBLE_KINDS)[number];

/** One condition with its place and its size. */
export interface Trouble {
  readonly kind: TroubleKind;
  /** Which wheel, counted from 1, or which side the zero was set from; null where the kind has no places. */
  readonly part: string | null;
  /** In the unit of its kind (`TROUBLE_GUIDE`); signed, left positive, where the kind has a way. */
  readonly size: number;
}

/** What is written down about the lock, and no secret: its card. */
export interface LockCard {
  readonly profile: Profile;
  /** The combination as written. */
  readonly combination: Combination;
  /** Play between dial and cam when the lock was last served, graduations. */
  readonly lostMotion: Graduations;
}

/** One exercise: a lock, its card and what is hidden in it. */
export interface TroubleTask {
  readonly card: LockCard;
  readonly trouble: Trouble;
}
