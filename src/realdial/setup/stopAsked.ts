import type { Graduations, Turn } from "../../lock/dial";

/** A stop that a setup asks for: come to this number by this turn, and stop. */
export interface StopAsked {
  readonly number: Graduations;
  readonly turn: Turn;
}

/**
 * Three places of the dial, come to from both sides: a middle that is off, a wrong count of steps and play of the knob each
 * show at another of them.
 *
 * @param perTurn - graduations in a turn, > 0
 */
export const stopsAsked = (perTurn: Graduations): readonly StopAsked[] => [
  { number: perTurn / 4, turn: "left" },
  { number: (3 * perTurn) / 4, turn: "right" },
  { number: 0, turn: "left" },
];

/** How far a place is past a number, left positive, the shorter way, graduations. */
export function stopError(position: Graduations, number: Graduations, perTurn: Graduations): Graduations {
  const off = position - number;
  return off - perTurn * Math.round(off / perTurn);
}

/** What an error of a stop says of a dial in the hand. */
export type StopVerdict = "agrees" | "near" | "off";

/** An eye reads a dial to a quarter of a graduation or so (common practice, no source). */
const READ_TO: Graduations = 0.3;
/** Beyond this it is no longer an eye or a hand. */
const NEAR: Graduations = 1;

/** @param error - graduations, either way @param resolution - the smallest step of what turns the dial, graduations */
export function stopVerdict(error: Graduations, resolution: Graduations): StopVerdict {
  const size = Math.abs(error);
  if (size <= Math.max(READ_TO, resolution)) return "agrees";
  return size <= Math.max(NEAR, 1.5 * resolution) ? "near" : "off";
}

/** What the errors of all stops come to. */
export type SetupVerdict =
  | { readonly verdict: "good" }
  /** All are off the same way: its 0 is elsewhere. @property by - graduations, left positive */
  | { readonly verdict: "shifted"; readonly by: Graduations }
  /** They are off by different amounts. @property most - graduations */
  | { readonly verdict: "uneven"; readonly most: Graduations };

/** @param errors - graduations, at least one @param resolution - as in `stopVerdict` */
export function setupVerdict(errors: readonly Graduations[], resolution: Graduations): SetupVerdict {
  const most = Math.max(...errors.map(Math.abs));
  if (errors.every((error) => stopVerdict(error, resolution) === "agrees")) return { verdict: "good" };
  const by = errors.reduce((sum, error) => sum + error, 0) / errors.length;
  const isShifted = errors.every((error) => stopVerdict(error - by, resolution) === "agrees");
  return isShifted ? { verdict: "shifted", by } : { verdict: "uneven", most };
}
