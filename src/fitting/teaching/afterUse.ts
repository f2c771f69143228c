import type { Graduations } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import type { Fit } from "../fit";
import type { FittingSizes } from "../fittingSizes";
import { playAfterUse } from "../keySeat";
import { FITTING } from "../trainingValues";

const { openingsADay, turnsAnOpening, daysOfUse } = FITTING;

/** How long a lock has been in use. */
export const SPANS = ["week", "month", "quarter", "year"] as const;
/** One of them. */
export type Span = (typeof SPANS)[number];

/** Turns of the dial in a time of use. */
export const turnsIn = (span: Span): number => (daysOfUse[SPANS.indexOf(span)] ?? 0) * openingsADay * turnsAnOpening;

/** How far a number may lie off and still open the lock: what the narrowest gate takes, or the encoder; graduations. */
export const takesOf = (profile: Profile): Graduations =>
  profile.kind === "wheel-pack" ? Math.min(...profile.wheelPack.gateTolerance) : profile.stopTolerance;

/** A lock after some use. */
export interface UsedLock {
  readonly turns: number;
  readonly play: Graduations;
  /**
   * Whether its numbers still open it, dialed without any error. What is turned to the left takes the cam along at the dial's
   * place; turned to the right, the cam stays behind by the play (`lock/train`).
   */
  readonly opens: boolean;
}

/** What use makes of the lost motion of a fit, and of its numbers. */
export function afterUse(
  { lostMotion, playGrows }: Pick<Fit, "lostMotion" | "playGrows">,
  { playMost }: Pick<FittingSizes, "playMost">,
  profile: Profile,
  span: Span,
): UsedLock {
  const turns = turnsIn(span);
  const play = playAfterUse(lostMotion, turns, playGrows, playMost);
  const turnsRight = profile.procedure.some(({ turn }) => turn === "right");
  return { turns, play, opens: !turnsRight || play <= takesOf(profile) };
}
