import type { Graduations } from "../../lock/dial";
import { wrap } from "../../lock/dial";
import type { Assembly } from "../assembly";
import type { LockToFit } from "../fittedLock";
import { keyLift } from "../keySeat";
import { FITTING } from "../trainingValues";

/** What turns in a lock on its door, and what the lever does then. Graduations are left positive. */
export interface TurnedParts {
  /** Where the dial stands: 0 is its zero at the top. */
  readonly dial: Graduations;
  /** Where the cam stands: 0 is its gate, or its mark, under the nose. */
  readonly cam: Graduations;
  /** The slot of the spindle, and with it the key, to the right of the top. */
  readonly slot: Graduations;
  /** How far the nose is in the gate, from 0 on the cam's edge to 1; an electronic lock has no gate. */
  readonly noseIn: number;
  /** How far the key lifts the lever, millimeters. */
  readonly lift_mm: number;
}

/** How deep the cam is cut at a place of its edge, from 0 to 1 in the gate. @param off - from the middle of the gate */
export function gateDepth(off: Graduations, perTurn: number): number {
  const { gateEdge, gateBottom } = FITTING;
  const hundredths = (Math.abs(wrap(off, perTurn)) * 100) / perTurn;
  return Math.min(1, Math.max(0, (gateEdge - hundredths) / (gateEdge - gateBottom)));
}

/**
 * Where the parts of a lock stand with its dial turned.
 *
 * Without a key the cam stays with its gate under the nose, and the dial turns in it, to the right as it is screwed in: its
 * zero is at the top where the right keyway lines up. The slot of the spindle is opposite to the dial's zero, as the first
 * keyway is to the gate; so a key that is not driven home meets the lever half a turn from zero.
 *
 * @param turned - how far dial and cam have been turned together since the key went in, graduations
 */
export function turnedParts({ dialIn, key }: Assembly, lock: LockToFit, turned: Graduations): TurnedParts {
  const { sizes, perTurn, slotAt, isElectronic } = lock;
  const cam = key === null ? 0 : turned;
  const ofKeyway = key === null ? (dialIn ?? slotAt) - slotAt : (key.keyway * perTurn) / sizes.keyways;
  const dial = cam - ofKeyway;
  const slot = perTurn / 2 - dial;
  const past = { keyAt_mm: sizes.keyAt_mm, headRadius_mm: sizes.keyHead_mm, leverAt_mm: sizes.leverAt_mm };
  return {
    dial,
    cam,
    slot,
    noseIn: isElectronic ? 0 : gateDepth(cam, perTurn),
    lift_mm: key?.isSeated === false ? keyLift(past, slot, perTurn) : 0,
  };
}
