import type { Graduations, Turn } from "../dial";
import type { Profile } from "../profile";

/** Where a lock takes its zero to be after turning each way: cam angle, graduations. */
export type LearnedZero = Readonly<Record<Turn, Graduations>>;

/** What an encoder lock counts from. */
export interface Counting {
  readonly zero: LearnedZero;
  /** Direction it takes the cam to be turned in before that has moved. */
  readonly firstTurn: Turn;
}

/** What a lock counts from: an encoder lock from the zero it has learned; null for a wheel pack, which goes with its cam. */
export const countingOf = ({ kind, procedure }: Profile, zero: LearnedZero): Counting | null =>
  kind === "wheel-pack" ? null : { zero, firstTurn: procedure[0]?.turn ?? "left" };
