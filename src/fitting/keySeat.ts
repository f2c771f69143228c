import type { Graduations } from "../lock/dial";
import type { FittingSizes } from "./fittingSizes";

/** A key that stands out of the cam, and the lever it goes past. Millimeters, seen along the spindle. */
export interface KeyPastLever {
  /** From the axis to the middle of the key's head, > 0. */
  readonly keyAt_mm: number;
  /** Half the width of the head, a round one, > 0. */
  readonly headRadius_mm: number;
  /** From the axis to the edge of the lever, a straight one, > 0. */
  readonly leverAt_mm: number;
}

/**
 * How far the cam turns with the key against the lever, once in each turn; it is under the lever's edge in the middle of it.
 *
 * A head of radius w at distance k from the axis reaches a straight edge at distance c while k cos(a) + w > c: it touches for
 * 2 acos((c - w)/k). Plane geometry.
 *
 * @returns graduations in [0, one turn]; 0 where the head goes past
 */
export function contactArc({ keyAt_mm, headRadius_mm, leverAt_mm }: KeyPastLever, perTurn: number): Graduations {
  const cos = (leverAt_mm - headRadius_mm) / keyAt_mm;
  if (cos >= 1) return 0;
  return (2 * Math.acos(Math.max(-1, cos)) * perTurn) / (2 * Math.PI);
}

/** The same for a lock whose parts have some sizes. */
export const ridingArc = ({ keyAt_mm, keyHead_mm, leverAt_mm }: FittingSizes, perTurn: number): Graduations =>
  contactArc({ keyAt_mm, headRadius_mm: keyHead_mm, leverAt_mm }, perTurn);

/**
 * How far a key that stands proud lifts the lever: what its head reaches beyond the lever's edge, k cos(a) + w - c, where that
 * is more than nothing (as `contactArc`).
 *
 * @param off - how far the key is round from where it is under the lever's edge, graduations
 * @returns millimeters
 */
export function keyLift({ keyAt_mm, headRadius_mm, leverAt_mm }: KeyPastLever, off: Graduations, perTurn: number) {
  return Math.max(0, keyAt_mm * Math.cos((2 * Math.PI * off) / perTurn) + headRadius_mm - leverAt_mm);
}

/** How tight the screw of a key is. */
export type KeyScrew = "out" | "loose" | "firm" | "stripped";

/**
 * What turning a screw does to it. @param torque_Nm - of the last turn, >= 0 @param limits_Nm - from which it holds, and above
 * which its thread strips
 */
export function screwAfter(torque_Nm: number, limits_Nm: readonly [holds: number, strips: number]): KeyScrew {
  const [holds, strips] = limits_Nm;
  if (torque_Nm > strips) return "stripped";
  return torque_Nm >= holds ? "firm" : "loose";
}

/**
 * Play between dial and cam after use: a key whose screw is loose works itself a wider seat.
 *
 * Straight growth up to the play of a key that only just still turns its cam; a training model, no source.
 *
 * @param fresh - play as fitted, graduations
 * @param turns - of the dial since, >= 0
 * @param grows - graduations in a thousand turns
 * @param most - graduations
 */
export const playAfterUse = (fresh: Graduations, turns: number, grows: Graduations, most: Graduations): Graduations =>
  Math.max(fresh, Math.min(most, fresh + (grows * turns) / 1000));
