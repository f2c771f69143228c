import type { FittingSizes } from "../../../../fitting/fittingSizes";
import type { TurnedParts } from "../../../../fitting/teaching/turnedParts";
import type { Graduations } from "../../../../lock/dial";

/** Units of the drawing for a millimeter. */
export const SCALE = 2.7;
/** Where the face of the ring that the dial comes close to is, and the axis of the spindle. */
const RING_AT = 190;
export const AXIS = 166;
export const HEIGHT = 340;

/**
 * Sizes that only the drawing has, millimeters: from the axis, or along it. No trade sizes: chosen by eye so that each part can
 * be told from the next, and no sum, gauge or check uses them.
 */
export const DRAWN_mm = {
  dialThick: 7,
  knob: { radius: 14, from: -22 },
  /** From the rim of the dial to the ring's lip, beyond the room that is between them, and the width of the lip. */
  lip: { from: 0.7, wide: 6.5, deep: 5 },
  ringHole: 18,
  door: { hole: 7, high: 46 },
  plate: { hole: 6, high: 32 },
  body: 28,
  cam: { radius: 13, thick: 8 },
  spindle: 3.5,
  washer: 9,
  leverThick: 3,
  nose: { wide: 3, high: 5, over: 6 },
  key: { in: 5, seated: 0.6, proud: 3, half: 1 },
  slot: 14,
  cover: { deep: 24, high: 36 },
  strike: { wide: 7.4, high: 17 },
  /** How far a dial that lies in the tray is drawn away from the ring. */
  apart: 24,
};

/** How deep each face of a lock's parts is, millimeters from the face of the ring. */
export function depthsOf({ ring_mm, door_mm, plate_mm, body_mm }: FittingSizes) {
  const plate = ring_mm + door_mm;
  const body = plate + plate_mm;
  const face = body + body_mm;
  return { door: ring_mm, plate, body, face, cover: face + DRAWN_mm.cover.deep };
}

export type Depths = ReturnType<typeof depthsOf>;

export const x = (depth_mm: number) => RING_AT + SCALE * depth_mm;
export const y = (up_mm: number) => AXIS - SCALE * up_mm;

/** How deep the gate is: its lever stays clear of the spindle. */
export const gateDeep_mm = ({ leverAt_mm }: FittingSizes) => Math.min(2.5, leverAt_mm - DRAWN_mm.spindle - 0.5);

/** Where the lever is, above where it rides on the cam's edge, millimeters. */
export const leverUp_mm = ({ noseIn, lift_mm }: TurnedParts, sizes: FittingSizes) =>
  lift_mm > 0 ? lift_mm : -noseIn * gateDeep_mm(sizes);

/** A place round the axis, seen from the side: how high it is, and how far toward whoever looks, as parts of its radius. */
export function fromSide(toTheRight: Graduations, perTurn: number) {
  const angle = (2 * Math.PI * toTheRight) / perTurn;
  return { up: Math.cos(angle), near: Math.sin(angle) };
}

/** Where the strike is drawn, right of the cover: it is beside the section, not in it. */
export const strikeAt = ({ cover }: Depths) => Math.max(572, x(cover) + 72);
